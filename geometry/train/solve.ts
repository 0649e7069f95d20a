// Linear equations among rates, solved exactly. First what has one unknown left is followed, breadth first; what is left
// after that (differentials whose sides hang together) is eliminated, sparsest line first. Nothing is rounded.
import { isZero, ratio, ZERO, type Ratio } from "../numeric/ratio.ts";
import { scaled } from "./exact.ts";

/** Sum of coefficient × rate = 0, in whole coefficients, none of them 0 and no arbor twice. */
export interface Row {
  readonly vars: readonly number[];
  readonly coefs: readonly number[];
  /** Index of the engagement it stands for, or −1: a ring that is locked. */
  readonly engagement: number;
}

/** What a rate hangs on. */
export const FROM_INPUT = 1;
export const FROM_LOCK = 2;

/** The state of one solution: `rate` is null while unknown. Owned and changed by the functions below only. */
export interface Work {
  readonly rows: readonly Row[];
  readonly rowsOf: readonly (readonly number[])[];
  /** Unknowns left in each row. */
  readonly left: number[];
  readonly rate: (Ratio | null)[];
  readonly hangsOn: number[];
  /** The rows that gave each rate; empty: it was given. */
  readonly because: (readonly number[])[];
  readonly ready: number[];
  /** Rows that cannot all be true, or null. */
  clash: readonly number[] | null;
}

export function begin(count: number, rows: readonly Row[]): Work {
  const rowsOf: number[][] = Array.from({ length: count }, () => []);
  rows.forEach((row, r) => { for (const v of row.vars) rowsOf[v].push(r); });
  const left = rows.map((row) => row.vars.length);
  const ready = left.flatMap((n, r) => (n === 1 ? [r] : []));
  return {
    rows, rowsOf, left, ready, clash: null,
    rate: new Array<Ratio | null>(count).fill(null),
    hangsOn: new Array<number>(count).fill(0),
    because: new Array<readonly number[]>(count).fill([]),
  };
}

/** Gives one rate from outside the rows. */
export function give(work: Work, v: number, rate: Ratio, hangsOn: number, because: readonly number[] = []): void {
  work.rate[v] = rate;
  work.hangsOn[v] = hangsOn;
  work.because[v] = because;
  for (const r of work.rowsOf[v]) {
    work.left[r] -= 1;
    if (work.left[r] === 1) work.ready.push(r);
    else if (work.left[r] === 0 && !because.includes(r) && work.clash === null && !holds(work, r)) work.clash = [r];
  }
}

/** Follows what the rates given so far decide by engagements alone, leaving locked rings for later. */
export function settleFree(work: Work): void {
  const later: number[] = [];
  follow(work, later);
  work.ready.push(...later);
}

/** Follows everything that the rates given so far decide. Stops at the first clash. */
export function settle(work: Work): void {
  follow(work, null);
  if (work.clash === null && eliminate(work)) follow(work, null);
}

/** Every row that a clash rests on, back to what was given. */
export function tracedFrom(work: Pick<Work, "rows" | "because">, rows: readonly number[]): number[] {
  const seen = new Set(rows);
  for (const r of seen) for (const v of work.rows[r].vars) for (const b of work.because[v]) seen.add(b);
  return [...seen];
}

function follow(work: Work, later: number[] | null): void {
  for (let head = 0; head < work.ready.length && work.clash === null; head++) {
    const r = work.ready[head];
    if (work.left[r] !== 1) continue;
    const { vars, coefs, engagement } = work.rows[r];
    if (engagement < 0 && later !== null) {
      later.push(r);
      continue;
    }
    const open = vars.findIndex((v) => work.rate[v] === null);
    let hangsOn = engagement < 0 ? FROM_LOCK : 0;
    for (let i = 0; i < vars.length; i++) if (i !== open) hangsOn |= work.hangsOn[vars[i]];
    give(work, vars[open], knownSum(work, r, -coefs[open]), hangsOn, [r]);
  }
  work.ready.length = 0;
}

/** The known terms of a row added up, over a divisor. */
function knownSum(work: Work, r: number, divisor: number): Ratio {
  const { vars, coefs } = work.rows[r];
  let sum: Ratio = ZERO;
  for (let i = 0; i < vars.length; i++) {
    const rate = work.rate[vars[i]];
    if (rate === null || isZero(rate)) continue;
    const term = scaled(rate, coefs[i], divisor);
    sum = isZero(sum) ? term : sum.add(term);
  }
  return sum;
}

const holds = (work: Work, r: number): boolean => isZero(knownSum(work, r, 1));

/** One line of the elimination: terms + constant = 0. */
interface Line {
  readonly terms: Map<number, Ratio>;
  constant: Ratio;
  hangsOn: number;
  readonly rows: Set<number>;
}

/** Finds what several rows decide together; true if it found a rate or a clash. */
function eliminate(work: Work): boolean {
  const lines = knotted(work).map((r) => lineOf(work, r));
  const linesWith = new Map<number, Set<Line>>();
  for (const line of lines) for (const v of line.terms.keys()) note(linesWith, v, line);
  const open = new Set(lines);
  while (open.size > 0) {
    const line = sparsest(open);
    open.delete(line);
    if (line.terms.size === 0) {
      if (isZero(line.constant)) continue;
      work.clash = [...line.rows];
      return true;
    }
    const pivot = rarest(line, linesWith);
    divide(line, line.terms.get(pivot) as Ratio);
    for (const other of linesWith.get(pivot) ?? []) if (other !== line) subtract(other, line, pivot, linesWith);
    linesWith.set(pivot, new Set([line]));
  }
  let found = false;
  for (const line of lines) {
    if (line.terms.size !== 1) continue;
    const [v] = line.terms.keys();
    if (work.rate[v] !== null) continue;
    give(work, v, line.constant.neg(), line.hangsOn, [...line.rows]);
    found = true;
  }
  return found;
}

/** The rows with unknowns left, but for chains that hang loose at an end: no such end can be decided from its chain. */
function knotted(work: Work): number[] {
  const uses = new Map<number, number>();
  const rows = new Set<number>();
  work.rows.forEach((row, r) => {
    if (work.left[r] < 2) return;
    rows.add(r);
    for (const v of row.vars) if (work.rate[v] === null) uses.set(v, (uses.get(v) ?? 0) + 1);
  });
  const loose = [...uses.keys()].filter((v) => uses.get(v) === 1);
  for (let v = loose.pop(); v !== undefined; v = loose.pop()) {
    const r = work.rowsOf[v].find((row) => rows.has(row) && work.left[row] === 2);
    if (r === undefined) continue;
    rows.delete(r);
    for (const w of work.rows[r].vars) {
      if (work.rate[w] !== null) continue;
      uses.set(w, (uses.get(w) ?? 0) - 1);
      if (uses.get(w) === 1) loose.push(w);
    }
  }
  return [...rows];
}

function lineOf(work: Work, r: number): Line {
  const { vars, coefs, engagement } = work.rows[r];
  const terms = new Map<number, Ratio>();
  let hangsOn = engagement < 0 ? FROM_LOCK : 0;
  vars.forEach((v, i) => {
    if (work.rate[v] === null) terms.set(v, ratio(coefs[i]));
    else hangsOn |= work.hangsOn[v];
  });
  return { terms, constant: knownSum(work, r, 1), hangsOn, rows: new Set([r]) };
}

function sparsest(open: ReadonlySet<Line>): Line {
  let best: Line | null = null;
  for (const line of open) {
    if (best === null || line.terms.size < best.terms.size) best = line;
    if (best.terms.size <= 1) break;
  }
  return best as Line;
}

function rarest(line: Line, linesWith: ReadonlyMap<number, ReadonlySet<Line>>): number {
  let best = -1, least = Infinity;
  for (const v of line.terms.keys()) {
    const uses = linesWith.get(v)?.size ?? 0;
    if (uses < least) { best = v; least = uses; }
  }
  return best;
}

function divide(line: Line, by: Ratio): void {
  for (const [v, c] of line.terms) line.terms.set(v, c.div(by));
  line.constant = line.constant.div(by);
}

function subtract(from: Line, line: Line, pivot: number, linesWith: Map<number, Set<Line>>): void {
  const times = from.terms.get(pivot) as Ratio;
  for (const [v, c] of line.terms) {
    const sum = (from.terms.get(v) ?? ZERO).sub(c.mul(times));
    if (isZero(sum)) {
      from.terms.delete(v);
      linesWith.get(v)?.delete(from);
    } else {
      from.terms.set(v, sum);
      note(linesWith, v, from);
    }
  }
  from.constant = from.constant.sub(line.constant.mul(times));
  from.hangsOn |= line.hangsOn;
  for (const r of line.rows) from.rows.add(r);
}

function note(linesWith: Map<number, Set<Line>>, v: number, line: Line): void {
  const set = linesWith.get(v);
  if (set === undefined) linesWith.set(v, new Set([line]));
  else set.add(line);
}
