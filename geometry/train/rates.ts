// The exact rate of every arbor: turns in the frame for one turn of the input. Rings that lock are found first, then all
// engagements are solved together, then couplings take along what nothing drives. What is bound has no rate.
import { engagementId, type Instrument } from "../instrument.ts";
import type { Bind } from "../movement.ts";
import { isZero, ONE, ZERO, type Ratio } from "../numeric/ratio.ts";
import { givenBy, linksOf, parts, type Link } from "./couplings.ts";
import type { Layout } from "./layout.ts";
import { meshesOf, rowOf, type Axes, type Mesh } from "./meshes.ts";
import { ringsOf, type Edge } from "./rings.ts";
import { begin, FROM_INPUT, FROM_LOCK, give, settle, settleFree, tracedFrom, type Row, type Work } from "./solve.ts";

export interface Rates {
  /** By arbor. Null: not driven, or bound. */
  readonly rate: readonly (Ratio | null)[];
  readonly bound: readonly boolean[];
  /** By engagement: the arbor on which both axes stand still, null for the frame; and whether they keep their distance. */
  readonly carrier: readonly (number | null)[];
  readonly steady: readonly boolean[];
  readonly binds: readonly Bind[];
}

/** A mesh with the carrier it is taken to have. */
interface Taken { readonly mesh: Mesh; readonly carrier: number | null }

interface Solved {
  readonly rate: (Ratio | null)[];
  readonly bound: boolean[];
  readonly binds: Bind[];
}

interface Train {
  readonly instrument: Instrument;
  readonly input: number;
  readonly fixed: readonly boolean[];
  readonly links: readonly Link[];
}

export function ratesOf(instrument: Instrument, layout: Layout, axes: Axes, encloses: readonly boolean[]): Rates {
  const meshes = meshesOf(instrument, layout, axes);
  const whole: Train = {
    instrument, input: layout.arborIndex.get(instrument.input.arbor) ?? -1,
    fixed: instrument.arbors.map((a) => a.fixed === true), links: linksOf(instrument, layout, axes, encloses),
  };
  const always = meshes.flatMap((mesh) => (mesh.carrier === undefined ? [] : [{ mesh, carrier: mesh.carrier }]));
  const perhaps = meshes.filter((mesh) => mesh.carrier === undefined);
  const { solved, parting, parted } = withoutPartedLinks(whole, always, perhaps);
  const jammed = [
    ...parting.map((m): [string, number, number] => [engagementId(instrument.engagements[m.engagement]), m.a, m.b]),
    ...parted.flatMap((l): [string, number, number][] => (l.kind === "pin and slot" ? [[l.id, l.driver, l.driven]] : [])),
  ];
  const idOf = (i: number): string => instrument.arbors[i].id;
  for (const [, a, b] of jammed) for (const v of [a, b]) if (solved.rate[v] === null) solved.bound[v] = true;
  joinBound(meshes, solved);
  return {
    rate: solved.rate, bound: solved.bound,
    carrier: meshes.map((m) => m.carrier ?? null), steady: meshes.map((m) => !parting.includes(m)),
    binds: [
      ...solved.binds,
      ...jammed.map(([id, a, b]): Bind => ({ engagements: [id], arbors: [a, b].filter((v) => solved.bound[v]).map(idOf), because: "distance" })),
    ],
  };
}

/** A pin and slot whose axes part gives nothing, even where what parts them is taken along by a later coupling. */
function withoutPartedLinks(whole: Train, always: readonly Taken[], perhaps: readonly Mesh[]): { solved: Solved; parting: Mesh[]; parted: Link[] } {
  const parted: Link[] = [];
  for (let train = whole; ;) {
    const { solved, parting } = withStandingCarriers(train, always, perhaps);
    const still = stillIn(solved.rate), more = train.links.filter((l) => parts(l, still));
    if (more.length === 0) return { solved, parting, parted };
    parted.push(...more);
    train = { ...train, links: train.links.filter((l) => !more.includes(l)) };
  }
}

/** A carrier that does not turn carries nothing round; whether it turns may hang on the very engagements it carries. */
function withStandingCarriers(train: Train, always: readonly Taken[], perhaps: readonly Mesh[]): { solved: Solved; parting: Mesh[] } {
  let solved = solveTrain(train, always);
  let standing: readonly Mesh[] = [];
  if (perhaps.length > 0) {
    let left = perhaps.filter((m) => m.turning.every(stillIn(solved.rate)));
    do {
      standing = left;
      solved = solveTrain(train, [...always, ...standing.map((mesh) => ({ mesh, carrier: null }))]);
      left = standing.filter((m) => m.turning.every(stillIn(solved.rate)));
    } while (left.length < standing.length);
  }
  return { solved, parting: perhaps.filter((m) => !standing.includes(m)) };
}

const stillIn = (rate: readonly (Ratio | null)[]) => (arbor: number): boolean => {
  const r = rate[arbor];
  return r === null || isZero(r);
};

/** So many contradictions are named; each needs a solution of its own. */
const MOST_CLASHES = 12;

/** With the rows of one contradiction set aside another may show; a ring that locks the input is named already. */
function solveTrain(train: Train, taken: readonly Taken[]): Solved {
  const { rows, binds, ringed } = rowsAndRings(train, taken);
  const held = new Set(ringed);
  let left: readonly Row[] = rows;
  let work = solveRows(train, left, true);
  if (train.fixed[train.input]) binds.push(...fixedInput(train, taken));
  let found = 0;
  for (; work.clash !== null; found++) {
    const traced = new Set(tracedFrom(work, work.clash).map((r) => left[r]));
    const known = found === MOST_CLASHES || [...traced].some((row) => row.engagement < 0);
    const stuck = known ? [train.input] : [...new Set([...traced].flatMap((row) => row.vars))].filter((v) => !train.fixed[v]);
    for (const v of stuck) held.add(v);
    if (!known) {
      binds.push(bindBy(train, [...traced], stuck));
      left = left.filter((row) => !traced.has(row));
    }
    work = solveRows(train, left, !known);
  }
  // Its input stuck, the rest is solved without one.
  if (found > 0) work = solveRows(train, left, false);
  const stuck = (v: number): boolean => held.has(v) || (work.hangsOn[v] & (FROM_LOCK | FROM_INPUT)) === FROM_LOCK;
  takeAlong(train, work, stuck);
  const bound = work.rate.map((rate, v) => !train.fixed[v] && (held.has(v) || (rate !== null && stuck(v))));
  return { rate: work.rate.map((rate, v) => (bound[v] ? null : rate)), bound, binds };
}

/** An input that is fixed contradicts whatever it is in mesh with. */
function fixedInput({ instrument, input }: Train, taken: readonly Taken[]): Bind[] {
  const engagements = taken.filter(({ mesh }) => mesh.a === input || mesh.b === input)
    .map(({ mesh }) => engagementId(instrument.engagements[mesh.engagement]));
  return engagements.length === 0 ? [] : [{ engagements, arbors: [instrument.input.arbor], because: "input" }];
}

/** What fixed wheels hold still, then what locked rings hold, then what the input drives, unless it cannot turn. */
function solveRows(train: Train, rows: readonly Row[], driven: boolean): Work {
  const work = begin(train.fixed.length, rows);
  train.fixed.forEach((fixed, v) => { if (fixed) give(work, v, ZERO, 0); });
  settleFree(work);
  if (rows.some((row) => row.engagement < 0)) settle(work);
  if (driven) drive(train, work);
  settle(work);
  return work;
}

function drive({ input, fixed }: Train, work: Work): void {
  if (work.rate[input] === null) give(work, input, ONE, FROM_INPUT);
  else if (!fixed[input]) work.clash ??= work.because[input];
}

/** Couplings in the order of the file, again and again until none gives anything. */
function takeAlong(train: Train, work: Work, stuck: (arbor: number) => boolean): void {
  const rate = (v: number): Ratio | null => work.rate[v];
  const still = stillIn(work.rate);
  for (let more = true; more;) {
    more = false;
    for (const link of train.links) {
      const given = givenBy(link, rate, still);
      if (given === null || stuck(given.by) || stuck(given.to)) continue;
      give(work, given.to, given.rate, work.hangsOn[given.by] | FROM_INPUT);
      settle(work);
      more = true;
    }
  }
}

/** The rows to solve: of a ring only what its tree needs, and a row that locks each ring that contradicts itself. */
function rowsAndRings(train: Train, taken: readonly Taken[]): { rows: Row[]; binds: Bind[]; ringed: Set<number> } {
  const byCarrier = new Map<number | null, Taken[]>();
  for (const t of taken) {
    const group = byCarrier.get(t.carrier);
    if (group === undefined) byCarrier.set(t.carrier, [t]);
    else group.push(t);
  }
  const rows: Row[] = [], binds: Bind[] = [], ringed = new Set<number>();
  for (const [carrier, group] of byCarrier) {
    const free = group.filter(({ mesh }) => !isGround(train, carrier, mesh.a) && !isGround(train, carrier, mesh.b));
    const { rings, spare } = ringsOf(free.map(({ mesh }) => edgeOf(train, mesh)));
    const left = new Set([...spare].map((i) => free[i].mesh));
    for (const { mesh } of group) if (!left.has(mesh)) rows.push(rowOf(mesh, carrier));
    for (const ring of rings) {
      const members = ring.nodes.filter((v) => v !== FIXED);
      for (const v of members) ringed.add(v);
      const fixed = members.length < ring.nodes.length;
      for (const v of members) rows.push(lockRow(v, carrier));
      if (fixed && carrier !== null) rows.push(lockRow(carrier, null));
      binds.push({
        engagements: ring.edges.map((i) => engagementId(train.instrument.engagements[free[i].mesh.engagement])),
        arbors: members.map((v) => train.instrument.arbors[v].id), because: fixed ? "fixed" : "ring",
      });
    }
  }
  return { rows, binds, ringed };
}

/** On a carrier all fixed wheels are one thing. */
const FIXED = -1;

/** What stands still against the carrier whatever turns: the carrier's own wheels, and on the frame the fixed ones. */
const isGround = (train: Train, carrier: number | null, v: number): boolean =>
  carrier === null ? train.fixed[v] : v === carrier;

const edgeOf = (train: Train, mesh: Mesh): Edge => ({
  a: train.fixed[mesh.a] ? FIXED : mesh.a, b: train.fixed[mesh.b] ? FIXED : mesh.b, p: mesh.teethA, q: mesh.teethB,
});

/** Each wheel of a locked ring turns as its carrier does; where the ring takes in a fixed wheel the carrier stands too. */
const lockRow = (member: number, carrier: number | null): Row => carrier === null
  ? { vars: [member], coefs: [1], engagement: -1 } : { vars: [member, carrier], coefs: [1, -1], engagement: -1 };

/** The bind that a clash shows. What only leads from the input to where the contradiction begins is not named. */
function bindBy(train: Train, traced: readonly Row[], stuck: readonly number[]): Bind {
  const fixed = traced.some((row) => row.vars.some((v) => train.fixed[v]));
  const named = fixed ? traced : withoutLead(train.input, traced);
  return {
    engagements: named.map((row) => row.engagement).sort((x, y) => x - y).map((e) => engagementId(train.instrument.engagements[e])),
    arbors: stuck.map((v) => train.instrument.arbors[v].id), because: fixed ? "fixed" : "train",
  };
}

function withoutLead(input: number, traced: readonly Row[]): readonly Row[] {
  let rows = traced;
  for (let source = input; ;) {
    const at = rows.filter((row) => row.vars.includes(source));
    if (at.length !== 1 || at[0].vars.length !== 2 || rows.length <= 2) return rows;
    rows = rows.filter((row) => row !== at[0]);
    source = at[0].vars[0] === source ? at[0].vars[1] : at[0].vars[0];
  }
}

/** What is joined to something bound and not driven otherwise is held by it, and so is not idle. */
function joinBound(meshes: readonly Mesh[], solved: Solved): void {
  if (!solved.bound.includes(true)) return;
  const near = solved.rate.map((): number[] => []);
  for (const m of meshes) {
    near[m.a].push(m.b);
    near[m.b].push(m.a);
    if (typeof m.carrier === "number") near[m.carrier].push(m.a, m.b);
  }
  const held = solved.bound.flatMap((is, v) => (is ? [v] : []));
  for (const v of held) for (const w of near[v]) {
    if (solved.rate[w] !== null || solved.bound[w]) continue;
    solved.bound[w] = true;
    held.push(w);
  }
}
