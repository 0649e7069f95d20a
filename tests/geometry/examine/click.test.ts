// A click whose pawl is drawn. Its figures are the cosine rule's; the swing of its tip is stepped by hand as an oracle.
import { describe, expect, it } from "vitest";
import { pawlsOf, restsAt } from "../../../geometry/bodies/pawl.ts";
import { examine } from "../../../geometry/examine/sheet.ts";
import type { Finding } from "../../../geometry/finding.ts";
import type { Arbor, Instrument, Part, Sense } from "../../../geometry/instrument.ts";
import { apart, bar, disc, hullOf, standAt } from "../../../geometry/planar/apart.ts";
import { signedAreaMmSq } from "../../../geometry/planar/outline.ts";
import { workOut } from "../../../geometry/workout.ts";

interface How { readonly length?: number; readonly width?: number; readonly angle?: number; readonly passes?: Sense; readonly z?: number; readonly pillar?: readonly [number, number]; readonly carried?: boolean; readonly teeth?: number }

/** A ratchet of 20 mm over the tips and 1 mm deep on arbor A, and a stud K 16 mm to its right with the pawl. */
function clicked({ length = 11.9, width = 2, angle = 222, passes = "clockwise", z = 10, pillar, carried = false, teeth = 12 }: How = {}): Instrument {
  const ratchet: Part = { id: "r", kind: "ratchet", teeth, diameter: 20, depth: 1, z: 10, thickness: 2 };
  const pawl: Part = { id: "p", kind: "arm", length, width, angle, z, thickness: 2 };
  const arbor = (id: string, x: number, parts: Part[], more: Partial<Arbor> = {}): Arbor => ({ id, x, y: 0, diameter: 2, foot: 0, head: 30, parts, ...more });
  const arbors = carried ? [arbor("A", 0, []), arbor("F", 0, [ratchet], { fixed: true, foot: 31, head: 40 }), { id: "K", diameter: 2, foot: 0, head: 30, parts: [pawl], rides: { on: "A", radius: 16, angle: 0 } }]
    : [arbor("A", 0, [ratchet]), arbor("K", 16, [pawl], { fixed: true })];
  return {
    endshake: 1, name: "a click", arbors, engagements: [], couplings: [{ kind: "click", ratchet: "r", on: "K", passes, pawl: "p" }],
    input: { arbor: "A", days: 1, sense: "clockwise" }, practice: { sideshake: 0, runout: 0, planGap: 0.5, faceGap: 0.5, wobble: 0, endshake: 0.1 },
    frame: { plates: [], pillars: pillar ? [{ id: "P", x: pillar[0], y: pillar[1], diameter: 1, from: 0, to: 30 }] : [] },
  };
}
const found = (how: How, code: string, ...between: string[]): Finding | undefined => examine(workOut(clicked(how)), { all: true }).findings
  .find((f) => f.code === code && between.every((id) => f.between.includes(id)));

describe("a click's pawl", () => {
  it("[CLICK1] comes under the tips of its ratchet by what it drops, or is said to miss them", () => {
    const right = found({}, "depth", "p", "r");
    expect(right?.severity).toBe("free");
    expect(Math.abs((right?.gap ?? 0) - 1)).toBeLessThan(1e-9);
    // Too short by 16 − √(5² + 1²) − 10.
    const short = found({ length: 5 }, "depth", "p", "r");
    expect(short?.severity).toBe("foul");
    expect(Math.abs((short?.gap ?? 0) + (6 - Math.hypot(5, 1)))).toBeLessThan(1e-9);
    expect(short?.says).toContain("lets both ways pass");
    // With fine teeth and a broad pawl its side lies on the next tooth before it has dropped to the root.
    const broad = found({ teeth: 60, length: 9 }, "depth", "p", "r");
    expect(broad?.gap ?? 1).toBeLessThan(0.9);
    expect(broad?.severity).toBe("tight");
    expect(broad?.gap ?? 0).toBeGreaterThan(0);
  });

  it("[CLICK1] where its side lies on the next tooth, it touches that tooth's tip and no other", () => {
    const [pawl] = pawlsOf(workOut(clicked({ teeth: 60, length: 9 })));
    if (pawl === undefined) throw new Error("there is a pawl");
    const rests = restsAt(pawl) ?? 0;
    // The oracle: the bar turned down on the tips, the foot of a tooth's face at its corner.
    const side = Math.acos((16 ** 2 + pawl.reachMm ** 2 - rests ** 2) / (2 * 16 * pawl.reachMm)) + Math.atan2(1, 9);
    const corner = -Math.acos((16 ** 2 + rests ** 2 - pawl.reachMm ** 2) / (2 * 16 * rests));
    const gaps = Array.from({ length: 20 }, (_, k) => corner + ((k + 1) * 2 * Math.PI) / 60).map((rad) =>
      apart({ outside: [bar(0, 9, 2, Math.PI + side)], hollows: [] }, standAt(16, 0, 0), { outside: [disc(0)], hollows: [] }, standAt(10 * Math.cos(rad), 10 * Math.sin(rad), 0)));
    expect(Math.abs(Math.min(...gaps))).toBeLessThan(1e-6);
  });

  it("[CLICK2] holds only on the side on which the tooth drives it towards its own axis", () => {
    expect(found({ angle: 138 }, "depth", "p", "r")?.severity).toBe("foul");
    expect(found({ angle: 138 }, "depth", "p", "r")?.says).toContain("points the way that is to pass");
    expect(found({ angle: 138, passes: "anticlockwise" }, "depth", "p", "r")?.severity).toBe("free");
    expect(found({ passes: "anticlockwise" }, "depth", "p", "r")?.severity).toBe("foul");
  });

  it("[CLICK2] is pushed out where its axis stands within the line square to the tooth's face", () => {
    // The line square to a radial face at the tip stands √(16² − 10²) = 12.49 from the axis.
    expect(found({ length: 12.4 }, "depth", "p", "r")?.severity).toBe("free");
    expect(found({ length: 12.6 }, "depth", "p", "r")?.severity).toBe("tight");
    expect(found({ length: 12.6 }, "depth", "p", "r")?.says).toContain("only its spring");
  });

  it("[CLICK3] stays on its ratchet in height at the worst of both shakes", () => {
    expect(found({}, "run-off", "p", "r")?.severity).toBe("free");
    expect(found({ z: 11.7 }, "run-off", "p", "r")?.severity).toBe("tight");
    expect(found({ z: 12 }, "run-off", "p", "r")?.severity).toBe("foul");
  });

  it("[CLICK4] its tip swings from the root to over the tips, clear of everything near or not: stepped as an oracle", () => {
    // Over the back of the pawl, where lifting brings it, and in front of its end.
    for (const pillar of [[7.8, -9.6], [6.4, -7.9], [9, -9.4], [12, -7]] as const) {
      const swung = found({ pillar }, "gap", "p", "P"), pawl = pawlsOf(workOut(clicked({ pillar })))[0];
      const at = (r: number) => Math.PI + Math.acos((16 ** 2 + (pawl?.reachMm ?? 0) ** 2 - r * r) / (2 * 16 * (pawl?.reachMm ?? 1))) + Math.atan2(1, 11.9);
      let least = Infinity;
      for (let i = 0; i <= 4000; i++) {
        const rad = at(9) + ((at(10) - at(9)) * i) / 4000;
        least = Math.min(least, apart({ outside: [bar(0, 11.9, 2, rad)], hollows: [] }, standAt(16, 0, 0), { outside: [disc(0.5)], hollows: [] }, standAt(pillar[0], pillar[1], 0)));
      }
      expect(Math.max(0, swung?.gap ?? -9)).toBeLessThanOrEqual(Math.max(0, least) + 1e-6);
      // The round about all its places stands before the middle of its square end by no more than √(11.9² + 1²) − 11.9.
      expect(Math.max(0, least) - Math.max(0, swung?.gap ?? -9)).toBeLessThan(0.042);
      expect(swung?.severity).toBe((swung?.gap ?? 0) <= 0 ? "foul" : least < 0.5 ? "tight" : "free");
    }
  });

  it("[CLICK4] a pawl carried round is followed against what stands, all round", () => {
    const met = found({ carried: true, pillar: [0, 13] }, "gap", "p", "P");
    expect(met?.severity).toBe("foul");
    expect(met?.when?.every).toBe("1");
    expect(found({ carried: true, pillar: [0, 20] }, "gap", "p", "P")?.severity).toBe("free");
  });

  it("[CLICK4] a hull is anticlockwise and holds every corner", () => {
    const bars = [bar(0, 10, 2, 0), bar(0, 10, 2, 0.4)].map((b) => b.corners), hull = hullOf(bars);
    for (const b of bars) for (let k = 0; k < b.length; k += 2)
      expect(apart({ outside: [{ corners: hull, radius: 0 }], hollows: [] }, standAt(0, 0, 0), { outside: [disc(0)], hollows: [] }, standAt(b[k] ?? 99, b[k + 1] ?? 99, 0))).toBeLessThan(1e-9);
    expect(signedAreaMmSq(hull)).toBeGreaterThan(20);
  });
});
