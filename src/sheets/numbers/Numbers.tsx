// The Numbers sheet: the train as it stands, finding numbers for the chosen pointer, what lies beyond a plain train,
// dividing, and every arbor with its exact rate.
import { useState } from "react";
import type { Movement } from "../../../geometry/index.ts";
import { useNow } from "../../state/hooks.ts";
import { arborOf } from "../words.tsx";
import { Beside } from "./Beside.tsx";
import { Dividing } from "./Dividing.tsx";
import { Finding } from "./Finding.tsx";
import type { Writing } from "./Fractions.tsx";
import "./numbers.css";
import { Arbors, Pointers } from "./Standing.tsx";

export function Numbers() {
  const movement = useNow((s) => s.worked?.movement ?? null);
  const chosen = useNow((s) => s.chosen);
  const name = useNow((s) => s.instrument?.name ?? "");
  const [way, setWay] = useState<Writing>("fractions");
  if (!movement) return null;
  const arbor = arborOf(movement, chosen);
  const display = displayFor(movement, arbor);
  return (
    <div className="numbers">
      {movement.displays.length > 0 && <Pointers movement={movement} chosen={arbor} way={way} onWay={setWay} />}
      <Finding key={`${name} ${display === null ? "" : movement.displays[display]?.id ?? ""}`} movement={movement} display={display} way={way} />
      <Beside movement={movement} display={display} />
      <Dividing movement={movement} />
      <Arbors movement={movement} chosen={arbor} way={way} />
    </div>
  );
}

/** The pointer that is sought for: that of the chosen arbor, else the first whose period is wanted and does not come of itself. */
function displayFor(movement: Movement, arbor: string | null): number | null {
  const own = movement.displays.findIndex((d) => movement.arbors[d.arbor]?.id === arbor);
  const first = movement.displays.findIndex((d) => d.wanted !== null && d.wanted !== movement.instrument.input.days && d.rate !== null);
  const found = own >= 0 ? own : first;
  return found < 0 ? null : found;
}
