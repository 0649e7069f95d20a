// Random trains against a dense elimination, and against themselves renamed, permuted, turned and mirrored.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Arbor, Engagement, Instrument } from "../../../geometry/instrument.ts";
import type { Movement } from "../../../geometry/movement.ts";
import { isZero, ratio, writeRatio, ZERO, type Ratio } from "../../../geometry/numeric/ratio.ts";
import { workOut } from "../../../geometry/workout.ts";
import { arbor, gear, instrument, studOn, wheel } from "./made.ts";

const RUNS = { seed: 20260, numRuns: 400 };

interface Sketch { readonly kinds: readonly number[]; readonly pairs: readonly (readonly [number, number, number, number, boolean])[]; readonly input: number }

const sketch: fc.Arbitrary<Sketch> = fc.record({
  kinds: fc.array(fc.integer({ min: 0, max: 7 }), { minLength: 3, maxLength: 9 }),
  pairs: fc.array(fc.tuple(fc.nat(8), fc.nat(8), fc.integer({ min: 3, max: 9 }), fc.integer({ min: 3, max: 9 }), fc.boolean()), { minLength: 1, maxLength: 11 }),
  input: fc.nat(8),
});

/**
 * Kinds: 0 and 1 wheels on the frame, 2 and 3 in line at the middle, 4 a fixed wheel there, 5 a stud on the carrier of its
 * side, 6 the other carrier's; arbors 0 and 1 are the two carriers, in line. Pairs that would part their axes are left out.
 */
function drawn({ kinds, pairs, input }: Sketch): Instrument {
  const parts = kinds.map(() => [] as ReturnType<typeof wheel>[]);
  const middle = kinds.map((k, i) => i < 2 || (k >= 2 && k <= 4));
  const home = kinds.map((k, i) => (i < 2 || k < 5 ? -1 : k === 5 ? 0 : 1));
  const engagements: Engagement[] = [];
  pairs.forEach(([x, y, n, m, inside], e) => {
    const a = x % kinds.length, b = y % kinds.length;
    const steady = home[a] === home[b] || (middle[a] && home[b] >= 0) || (middle[b] && home[a] >= 0);
    if (a === b || !steady) return;
    parts[a].push(wheel(`a${e}`, n));
    parts[b].push(wheel(`b${e}`, m, inside ? { internal: true } : {}));
    engagements.push(gear(`a${e}`, `b${e}`));
  });
  const arbors = kinds.map((k, i): Arbor => arbor(`N${i}`, parts[i],
    home[i] >= 0 ? studOn(`N${home[i]}`, 10 + i, 40 * i) : middle[i] ? { x: 0, y: 0, ...(i > 1 && k === 4 ? { fixed: true } : {}) } : { x: 100 * i, y: 7 * i }));
  return instrument(arbors, engagements, { input: `N${input % kinds.length}` });
}

/** Every equation at once, by plain Gauss–Jordan: null where undetermined; undefined where they contradict. */
function dense(movement: Movement): (Ratio | null)[] | undefined {
  const n = movement.arbors.length;
  const rows: Ratio[][] = [];
  const row = (entries: readonly (readonly [number, number])[], right: number) => {
    const r = Array.from({ length: n + 1 }, () => ZERO);
    for (const [v, c] of entries) r[v] = r[v].add(ratio(c));
    r[n] = ratio(right);
    rows.push(r);
  };
  movement.arbors.forEach((a, i) => { if (a.arbor.fixed) row([[i, 1]], 0); });
  row([[movement.arborIndex.get(movement.instrument.input.arbor)!, 1]], 1);
  for (const e of movement.engagements) {
    const za = (e.driver as { teeth: number }).teeth;
    const zb = (e.driven as { teeth: number }).teeth * ((e.driven as { internal?: boolean }).internal ? 1 : -1);
    row([[e.driverArbor, za], [e.drivenArbor, -zb], ...(e.carrier === null ? [] : [[e.carrier, zb - za] as const])], 0);
  }
  const pivots: number[] = [];
  let top = 0;
  for (let v = 0; v < n; v++) {
    const p = rows.findIndex((r, i) => i >= top && !isZero(r[v]));
    if (p < 0) continue;
    [rows[top], rows[p]] = [rows[p], rows[top]];
    rows[top] = rows[top].map((c) => c.div(rows[top][v]));
    rows.forEach((r, i) => { if (i !== top && !isZero(r[v])) { const t = r[v]; rows[i] = r.map((c, k) => c.sub(rows[top][k].mul(t))); } });
    pivots[top++] = v;
  }
  if (rows.slice(top).some((r) => !isZero(r[n]))) return undefined;
  const rates: (Ratio | null)[] = Array.from({ length: n }, () => null);
  pivots.forEach((v, i) => { if (rows[i].slice(0, n).every((c, k) => k === v || isZero(c))) rates[v] = rows[i][n]; });
  return rates;
}

const said = (m: Movement): unknown => m.arbors.map((a) => [a.rate === null ? null : writeRatio(a.rate), a.bound]);

describe("random trains", () => {
  it("[TRAIN1] [TRAIN4] the sparse solution is the dense one, null where that is open, and a contradiction is always said", () => {
    let driven = 0, open = 0, contrary = 0, bound = 0;
    fc.assert(fc.property(sketch, (s) => {
      const made = workOut(drawn(s));
      const all = dense(made);
      if (all === undefined) {
        contrary++;
        const input = made.arborIndex.get(made.instrument.input.arbor)!;
        const alone = !made.engagements.some((e) => e.driverArbor === input || e.drivenArbor === input);
        if (!alone) expect(made.binds.length).toBeGreaterThan(0);
        return;
      }
      made.arbors.forEach((a, i) => {
        if (a.bound) bound++;
        else if (a.rate === null) { open++; expect(all[i]).toBeNull(); }
        else { driven++; expect(writeRatio(a.rate)).toBe(all[i] === null ? "open" : writeRatio(all[i])); }
      });
      if (made.binds.length === 0) expect(made.arbors.some((a) => a.bound)).toBe(false);
    }), RUNS);
    for (const kind of [driven, open, contrary, bound]) expect(kind).toBeGreaterThan(20);
  });

  it("[TRAIN15] renaming, turning or mirroring an instrument changes no rate, nor does permuting it where nothing binds", () => {
    fc.assert(fc.property(sketch, fc.double({ min: 0, max: 6, noNaN: true }), fc.boolean(), fc.boolean(), (s, angleRad, mirror, permute) => {
      const mixed = <T>(list: readonly T[]): T[] => (permute ? [...list].reverse() : [...list]);
      const made = drawn(s);
      const side = mirror ? -1 : 1, cos = Math.cos(angleRad), sin = Math.sin(angleRad);
      const moved: Instrument = {
        ...made,
        input: { ...made.input, arbor: `new-${made.input.arbor}` },
        arbors: mixed(made.arbors).map((a) => ({
          ...a, id: `new-${a.id}`,
          ...(a.x === undefined || a.y === undefined ? {} : { x: cos * a.x - sin * side * a.y, y: sin * a.x + cos * side * a.y }),
          ...(a.rides && { rides: { ...a.rides, on: `new-${a.rides.on}`, angle: side * a.rides.angle + (angleRad * 180) / Math.PI } }),
        })),
        engagements: mixed(made.engagements),
      };
      const one = workOut(made), other = workOut(moved);
      const rateOf = (m: Movement, id: string) => { const a = m.arbors[m.arborIndex.get(id)!]; return a.rate && writeRatio(a.rate); };
      if (one.binds.length === 0) expect(other.binds).toEqual([]);
      else expect(other.binds.length).toBeGreaterThan(0);
      if (permute && one.binds.length > 0) return;
      for (const a of made.arbors) expect(rateOf(other, `new-${a.id}`)).toBe(rateOf(one, a.id));
    }), RUNS);
  });

  it("[TRAIN15] working out twice gives the same", () => {
    fc.assert(fc.property(sketch, (s) => { expect(said(workOut(drawn(s)))).toEqual(said(workOut(drawn(s)))); }), { seed: 20261, numRuns: 50 });
  });
});

describe("hostile trains", () => {
  const chain = (count: number, more: readonly Engagement[] = [], input = "A0") => {
    const arbors = Array.from({ length: count }, (_, i) => arbor(`A${i}`, [wheel(`p${i}`, 1997), wheel(`w${i}`, 1999)], { x: i, y: 0 }));
    return instrument([...arbors, arbor("Z", [], { x: -1, y: 0 })], [...arbors.slice(1).map((_, i) => gear(`w${i}`, `p${i + 1}`)), ...more], { input });
  };
  const within = <T>(ms: number, work: () => T): T => {
    const start = performance.now();
    const done = work();
    expect(performance.now() - start).toBeLessThan(ms);
    return done;
  };

  it("[TRAIN16] terms of more than sixty digits stay exact", () => {
    const rate = workOut(chain(24)).arbors[23].rate!;
    expect(rate.n.toString().length).toBeGreaterThan(60);
    expect(rate.n).toBe(1999n ** 23n);
    expect(rate.d).toBe(1997n ** 23n);
    expect(rate.s).toBe(-1n);
  });

  it("[TRAIN16] two thousand arbors in one chain, driven or not, and closed on itself, take bounded time", () => {
    expect(within(4000, () => workOut(chain(1999))).arbors[1998].rate?.n).toBe(1999n ** 1998n);
    expect(within(4000, () => workOut(chain(1999, [], "Z"))).arbors[1998].rate).toBeNull();
    expect(within(4000, () => workOut(chain(1999, [gear("w1998", "p0")]))).binds[0].engagements.length).toBe(1999);
  });

  it("[TRAIN16] two thousand arbors that all contradict one another take bounded time", () => {
    const tangle = Array.from({ length: 8000 }, (_, i) => {
      const a = (i * 7919) % 1999, b = (i * 104729 + 1) % 1999;
      return gear(`w${a}`, `p${a === b ? (b + 1) % 1999 : b}`, { id: `e${i}` });
    });
    expect(within(8000, () => workOut(chain(1999, tangle))).binds.length).toBeGreaterThan(0);
  });

  it("[TRAIN16] three hundred epicyclics one behind the other take bounded time, driven or not", () => {
    const stages = Array.from({ length: 300 }, (_, i) => [
      arbor(`C${i}`, [wheel(`s${i}`, 19)], { x: 0, y: 0 }), arbor(`P${i}`, [wheel(`p${i}`, 17), wheel(`q${i}`, 23)], studOn(`C${i}`, 20)),
    ]).flat();
    const gears = Array.from({ length: 299 }, (_, i) => [gear(`s${i}`, `p${i + 1}`), gear(`q${i + 1}`, "f", { id: `f${i}` })]).flat();
    const fixed = (is: boolean) => arbor("F", [wheel("f", 29)], { x: 0, y: 0, fixed: is });
    expect(within(6000, () => workOut(instrument([...stages, fixed(true)], gears, { input: "C0" }))).arbors[598].rate).not.toBeNull();
    expect(within(6000, () => workOut(instrument([...stages, fixed(false)], gears, { input: "C0" }))).arbors[598].rate).toBeNull();
  });
});
