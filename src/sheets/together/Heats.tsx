// The order of heats: a ladder for each arbor whose joins are made hot, heats left to right, degrees upward, each join on
// its rung; a dashed line is the limit that a later heat breaks. Cautions are never folded away.
import { useMemo } from "react";
import { type HeatLadder, heatLadder, joinHeat, type Movement } from "../../../geometry/index.ts";
import { useActions, useNow } from "../../state/hooks.ts";
import { Mark } from "../Severity.tsx";
import { arborOf } from "../words.tsx";

export function Heats({ movement }: { readonly movement: Movement }) {
  const heated = useMemo(() => movement.instrument.arbors.filter((a) => a.parts.some((p) => joinHeat(p)?.heatedTo != null)).map(heatLadder), [movement]);
  return (
    <section aria-label="Order of heats" className="heats">
      <div className="heading ruled"><h2>Order of heats</h2><span className="beside">heats left to right, degrees upward</span></div>
      {heated.length === 0 ? <p className="note">No join of this instrument is made hot.</p> : <Ladders movement={movement} ladders={heated} />}
      <Cautions />
    </section>
  );
}

/** What is wrong always stands open; of what is right, the chosen arbor's, else one. */
function Ladders({ movement, ladders }: { readonly movement: Movement; readonly ladders: readonly HeatLadder[] }) {
  const chosen = arborOf(movement, useNow((s) => s.chosen));
  const { choose } = useActions();
  const wrong = ladders.filter((l) => l.limits.length > 0), right = ladders.filter((l) => l.limits.length === 0);
  const open = right.find((l) => l.arbor === chosen) ?? (wrong.length === 0 ? right.find((l) => l.suggested.length > 1) ?? right[0] : undefined);
  return (
    <>
      <div className="ladders">{[...wrong, ...(open ? [open] : [])].map((l) => <Ladder key={l.arbor} ladder={l} />)}</div>
      {right.length > 0 && <p className="row"><Mark severity="free" /> <span className="soft">Nothing spoiled on</span>
        {right.map((l) => <button key={l.arbor} type="button" className="plain" aria-pressed={l === open} onClick={() => choose(l.arbor)}>{l.arbor}</button>)}</p>}
    </>
  );
}

const WIDTH = 210, HEIGHT = 150, LEFT = 30, RIGHT = 8, TOP = 22, FOOT = 22;

function Ladder({ ladder: { arbor, heats, topC, degrees, rungs, limits, suggested } }: { readonly ladder: HeatLadder }) {
  const x = (across: number) => LEFT + across * (WIDTH - LEFT - RIGHT), y = (celsius: number) => HEIGHT - FOOT - (celsius / topC) * (HEIGHT - TOP - FOOT);
  return (
    <figure>
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={`Heats of arbor ${arbor}. ${limits.map((l) => l.says).join(". ") || "No later heat passes an earlier limit."}`}>
        <text className="name" x="0" y="13">{arbor}</text>
        {degrees.map((t) => <g key={t}><line className="grid" x1={LEFT} x2={WIDTH - RIGHT} y1={y(t)} y2={y(t)} /><text className="count" x={LEFT - 4} y={y(t) + 4} textAnchor="end">{t}</text></g>)}
        {limits.map((l) => <g key={l.says} className={l.pair.marginK <= 0 ? "foul" : "tight"}>
          <line className="limit" x1={x(l.from)} x2={x(l.to)} y1={y(l.bearsC)} y2={y(l.bearsC)} />
          <line className="rise" x1={x(l.to)} x2={x(l.to)} y1={y(l.bearsC)} y2={y(l.heatC)} />
        </g>)}
        {rungs.map((r) => <g key={r.joins.map((j) => j.part).join(" ")}>
          <line className="rung" x1={x(r.across) - 14} x2={x(r.across) + 14} y1={y(r.highC)} y2={y(r.highC)} />
          {r.joins.map((j, up) => <text key={j.part} className="part" x={x(r.across)} y={y(r.highC) - 4 - 12 * up} textAnchor="middle">{j.part}</text>)}
        </g>)}
        {heats.map((h) => <text key={h.order} className="count" x={x(h.across)} y={HEIGHT - 5} textAnchor="middle">{h.order ?? "any"}</text>)}
      </svg>
      <figcaption>
        {limits.map((l) => <p key={l.says}><Mark severity={l.pair.marginK <= 0 ? "foul" : "tight"} /> {l.says}.</p>)}
        {limits.length > 0 && <p>Better: {suggested.map((j) => `${j.part} (${j.by})`).join(", then ")}.</p>}
      </figcaption>
    </figure>
  );
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
