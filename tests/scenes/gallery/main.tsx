// A bare page with the movement view alone, set by its address: ?theme=dark&standing=edge&finding=1&lift=1&cut=.5&plates=.14
// &chosen=G&turns=12.5&drag=1
// &hidden=front E F&held=J. For looking at the view and for its browser tests.
import { useState } from "react";
import { createRoot } from "react-dom/client";
import { workOut } from "../../../geometry/index.ts";
import { MovementView } from "../../../scenes/MovementView.tsx";
import type { DragHearer, Standing } from "../../../scenes/props.ts";
import { FOUL, HARBOUR_DIAL } from "./harbour-dial.ts";

const asked = new URLSearchParams(location.search);
const figure = (name: string, usual: number) => Number(asked.get(name) ?? usual);
const movement = workOut(HARBOUR_DIAL);
const heard = new Set<() => void>();
let turns = figure("turns", 12.5);
const clock = { get: () => turns, subscribe: (f: () => void) => { heard.add(f); return () => { heard.delete(f); }; } };
const said: string[] = [];
const onDrag: DragHearer = {
  begin: (id) => said.push(`begin ${id}`), move: (id, at) => said.push(`move ${id} ${at.x.toFixed(2)} ${at.y.toFixed(2)}`),
  end: () => said.push("end"), cancel: () => said.push("cancel"),
};
Object.assign(window, { said, turnTo: (to: number) => { turns = to; for (const f of heard) f(); } });

function Gallery() {
  const [chosen, onChoose] = useState(asked.get("chosen"));
  return (
    <MovementView movement={movement} sheet={SHEET} turns={clock} theme={asked.get("theme") === "dark" ? "dark" : "light"}
      standing={STANDING} onSeen={(seen) => said.push(seen.says)} chosen={chosen} onChoose={(id) => { said.push(`choose ${id}`); onChoose(id); }}
      finding={asked.has("finding") ? FOUL : null} lift={figure("lift", 0)} cut={figure("cut", 0)} plates={figure("plates", 0.14)}
      drag={asked.has("drag") ? "in gear" : null} onDrag={onDrag} stillMotion letters label="Harbour dial"
      hidden={HIDDEN} held={asked.has("held") ? { id: asked.get("held") ?? "", by: 24 } : null} />
  );
}
const HIDDEN = new Set(asked.get("hidden")?.split(" "));
const STANDING = { view: (asked.get("standing") ?? "quarter") as Standing, nonce: 0 };
const SHEET = { assembly: [["B"], ["A"], ["C"], ["D"], ["H"], ["J"], ["E"], ["F"], ["G"]] } as never;

const root = document.getElementById("root");
if (root) createRoot(root).render(<Gallery />);
