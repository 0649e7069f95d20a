// The order of heats: a ladder for each arbor whose joins are made hot, heats left to right, degrees upward, each join on
// its rung; a dashed line is the limit that a later heat breaks. Cautions are never folded away.
import { useMemo } from "react";
import { type Arbor, heatPairs, joinHeat, type JoinHeat, type Movement, suggestedHeats } from "../../../geometry/index.ts";
import { useActions, useNow } from "../../state/hooks.ts";
import { Mark } from "../Severity.tsx";
import { arborOf } from "../words.tsx";

export function Heats({ movement }: { readonly movement: Movement }) {
  const heated = useMemo(() => movement.instrument.arbors.filter((a) => a.parts.some((p) => joinHeat(p)?.heatedTo != null)), [movement]);
  return (
    <section aria-label="Order of heats" className="heats">
      <div className="heading ruled"><h2>Order of heats</h2><span className="beside">heats left to right, degrees upward</span></div>
      {heated.length === 0 ? <p className="note">No join of this instrument is made hot.</p> : <Ladders movement={movement} arbors={heated} />}
      <Cautions />
    </section>
  );
}

/** What is wrong always stands open; of what is right, the chosen arbor's, else one. */
function Ladders({ movement, arbors }: { readonly movement: Movement; readonly arbors: readonly Arbor[] }) {
  const chosen = arborOf(movement, useNow((s) => s.chosen));
  const { choose } = useActions();
  const wrong = arbors.filter((a) => heatPairs(a).some((p) => p.marginK < MARGIN_K)), right = arbors.filter((a) => !wrong.includes(a));
  const open = right.find((a) => a.id === chosen) ?? (wrong.length === 0 ? right.find((a) => a.parts.filter((p) => p.join).length > 1) ?? right[0] : undefined);
  return (
    <>
      <div className="ladders">{[...wrong, ...(open ? [open] : [])].map((a) => <Ladder key={a.id} arbor={a} />)}</div>
      {right.length > 0 && <p className="row"><Mark severity="free" /> <span className="soft">Nothing spoiled on</span>
        {right.map((a) => <button key={a.id} type="button" className="plain" aria-pressed={a === open} onClick={() => choose(a.id)}>{a.id}</button>)}</p>}
    </>
  );
}

const MARGIN_K = 20;
const WIDTH = 210, HEIGHT = 150, LEFT = 30, RIGHT = 8, TOP = 22, FOOT = 22;

function Ladder({ arbor }: { readonly arbor: Arbor }) {
  const joins = arbor.parts.map(joinHeat).filter((j) => j !== null);
  const pairs = heatPairs(arbor).filter((p) => p.marginK < MARGIN_K);
  const orders = [...new Set(joins.map((j) => j.order ?? Infinity))].sort((a, b) => a - b);
  const most = Math.max(200, ...joins.map((j) => j.heatedTo ?? 0)) * 1.12;
  const x = (j: JoinHeat) => LEFT + ((orders.indexOf(j.order ?? Infinity) + 0.5) / orders.length) * (WIDTH - LEFT - RIGHT);
  const y = (celsius: number) => HEIGHT - FOOT - (celsius / most) * (HEIGHT - TOP - FOOT);
  const rungs = stacked(joins);
  const says = pairs.map((p) => `${p.later.part} at ${p.later.heatedTo} °C ${p.marginK <= 0 ? "undoes" : `comes within ${p.marginK} K of`} ${p.earlier.part}, which bears ${p.earlier.undoneAt} °C`);
  const suggested = suggestedHeats(arbor);
  return (
    <figure>
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={`Heats of arbor ${arbor.id}. ${says.join(". ") || "No later heat passes an earlier limit."}`}>
        <text className="name" x="0" y="13">{arbor.id}</text>
        {[0, 200, 400, 600, 800].filter((t) => t < most).map((t) => <g key={t}><line className="grid" x1={LEFT} x2={WIDTH - RIGHT} y1={y(t)} y2={y(t)} /><text className="count" x={LEFT - 4} y={y(t) + 4} textAnchor="end">{t}</text></g>)}
        {pairs.map((p) => <g key={`${p.earlier.part} ${p.later.part}`} className={p.marginK <= 0 ? "foul" : "tight"}>
          <line className="limit" x1={x(p.earlier)} x2={x(p.later)} y1={y(p.earlier.undoneAt ?? 0)} y2={y(p.earlier.undoneAt ?? 0)} />
          <line className="rise" x1={x(p.later)} x2={x(p.later)} y1={y(p.earlier.undoneAt ?? 0)} y2={y(p.later.heatedTo ?? 0)} />
        </g>)}
        {rungs.map(({ join, up }) => <g key={join.part}>
          <line className="rung" x1={x(join) - 14} x2={x(join) + 14} y1={y(join.heatedTo ?? 20)} y2={y(join.heatedTo ?? 20)} />
          <text className="part" x={x(join)} y={y(join.heatedTo ?? 20) - 4 - 12 * up} textAnchor="middle">{join.part}</text>
        </g>)}
        {orders.map((o, i) => <text key={o} className="count" x={LEFT + ((i + 0.5) / orders.length) * (WIDTH - LEFT - RIGHT)} y={HEIGHT - 5} textAnchor="middle">{Number.isFinite(o) ? o : "any"}</text>)}
      </svg>
      <figcaption>
        {pairs.map((p, i) => <p key={says[i]}><Mark severity={p.marginK <= 0 ? "foul" : "tight"} /> {says[i]}.</p>)}
        {pairs.length > 0 && <p>Better: {suggested.map((j) => `${j.part} (${j.by})`).join(", then ")}.</p>}
      </figcaption>
    </figure>
  );
}

/** Names of joins that share a heat and a rung stand over one another. */
function stacked(joins: readonly JoinHeat[]): { join: JoinHeat; up: number }[] {
  const seen = new Map<string, number>();
  return joins.map((join) => {
    const key = `${join.order ?? ""} ${Math.round((join.heatedTo ?? 20) / 40)}`, up = seen.get(key) ?? 0;
    seen.set(key, up + 1);
    return { join, up };
  });
}

/** Source of what is said: common practice. It stands here for every instrument, heated or not. */
function Cautions() {
  return (
    <div className="cautions" role="note" aria-label="Cautions">
      <p><b>Fumes and fluxes.</b> Solder and flux give off fumes: work where air is drawn away. Fluoride fluxes burn skin and eyes; wash off every trace, it also eats pivots.</p>
      <p><b>Lead and cadmium.</b> Tin–lead solder is poisonous to hands and food. Some old silver solders hold cadmium, whose fume kills: never heat one that is not marked free of it. Brass that is overheated gives off zinc fume.</p>
      <p><b>Hot metal and quenching.</b> Metal that no longer glows still burns. Never quench a hollow or wet piece towards yourself; let silver-soldered brass lose its redness first.</p>
      <p>Figures here are usual ones. The maker’s own sheet for the alloy, flux or adhesive, the rules where you work, and people trained in it come before them.</p>
    </div>
  );
}
