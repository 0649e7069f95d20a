// The movement at the left: the view itself, how it stands, how far it is opened, and the way a drag goes.
import { lazy, Suspense, useMemo, useState } from "react";
import type { DragHearer, MovementViewProps, Seen } from "../scenes/props.ts";
import { Choice } from "./head/Choice.tsx";
import { Openings } from "./head/Openings.tsx";
import { STANDING_WORDS, STANDINGS, WAY_WORDS, WAYS } from "./head/ways.ts";
import { findingKey } from "./state/actions.ts";
import { useActions, useBench, useDark, useNow, usePlayed, usePlaying, useStill } from "./state/hooks.ts";
import type { State } from "./state/state.ts";

const Player = lazy(() => import("./sheets/together/Player.tsx").then((m) => ({ default: m.Player })));
const MovementView = lazy(() => import("../scenes/MovementView.tsx").then((m) => ({ default: m.MovementView })));


const chosenFinding = ({ worked, finding }: State) => worked?.sheet.findings.find((f) => findingKey(f) === finding) ?? null;

/** An arbor that is engaged is in hand, to be tried at other distances: the depthing sheet shows them. */
function isTryingDepth({ drag, way, worked }: State): boolean {
  const held = worked?.movement.arborIndex.get(drag?.arbor ?? "");
  return way === "trying the depth" && held !== undefined && worked?.movement.engagements.some((e) => e.driverArbor === held || e.drivenArbor === held) === true;
}

export function MovementPane() {
  const [seen, setSeen] = useState<Seen | null>(null);
  const open = useNow((s) => s.worked !== null);
  const together = useNow((s) => s.sheet === "together");
  const { stand } = useActions();
  return (
    <section className="movement" aria-label="Movement">
      <Suspense fallback={null}>{open && <View onSeen={setSeen} />}</Suspense>
      {open && (
        <div className="over">
          <div className="views">
            <Choice label="Standing views" of={STANDINGS} words={STANDING_WORDS} now={seen?.standing ?? null}
              onChoose={stand} />
          </div>
          <p className="seen">{seen?.says}</p>
          {together ? <Suspense fallback={null}><Together /></Suspense> : <><div className="panel openings"><Openings /></div><Way /></>}
        </div>
      )}
    </section>
  );
}

function View({ onSeen }: { readonly onSeen: (seen: Seen) => void }) {
  const { store, clock, actions } = useBench();
  const worked = useNow((s) => s.worked);
  const name = useNow((s) => s.instrument?.name ?? "");
  const turns = useMemo(() => ({ get: clock.turns, subscribe: clock.subscribe }), [clock]);
  const onDrag = useMemo((): DragHearer => ({
    begin: (arbor) => {
      actions.takeUp(arbor);
      if (isTryingDepth(store.getState())) actions.set({ sheet: "depthing" });
    },
    move: (_, wanted) => actions.moveTo(wanted), end: actions.keep, cancel: actions.putBack,
  }), [store, actions]);
  const still = useStill();
  const dark = useDark();
  const finding = useNow(chosenFinding);
  const [chosen, lift, cut, plates] = [useNow((s) => s.chosen), useNow((s) => s.lift), useNow((s) => s.cut), useNow((s) => s.plates)];
  const way = useNow((s) => s.way);
  const standing = useNow((s) => s.standing);
  const preview = useNow((s) => s.preview);
  const hung = useHung();
  if (!worked) return null;
  const { sheet } = worked, movement = preview ?? worked.movement;
  return (
    <div className="scene">
      <MovementView movement={movement} sheet={sheet} turns={turns} theme={dark ? "dark" : "light"} standing={standing} onSeen={onSeen}
        chosen={chosen} onChoose={actions.choose} finding={finding} lift={lift} cut={cut} plates={plates} drag={way} onDrag={onDrag}
        stillMotion={still} letters {...hung} label={`${name}: ${movement.arbors.length} arbors, ${movement.engagements.length} engagements`} />
    </div>
  );
}

/** The panel of putting together comes with its sheet. */
function Together() {
  const movement = useNow((s) => s.worked?.movement ?? null);
  return movement && <Player movement={movement} />;
}

/** What is hidden and what is held over its place, while the movement is put together. */
function useHung(): Pick<MovementViewProps, "hidden" | "held"> {
  const playing = usePlaying(), hung = usePlayed() && playing.hung();
  return useMemo(() => {
    const [id, ...others] = hung?.ids ?? [];
    if (!hung || id === undefined) return {};
    return { hidden: hung.hidden, held: { id, with: others, by: hung.by, height: { get: playing.height, subscribe: playing.subscribe } } };
  }, [playing, hung]);
}

function Way() {
  const way = useNow((s) => s.way);
  const { set } = useActions();
  return (
    <div className="ways">
      <Choice label="How an arbor is dragged" of={WAYS} words={WAY_WORDS} now={way} onChoose={(to) => set({ way: to })} />
    </div>
  );
}
