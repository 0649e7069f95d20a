import { describe, expect, it } from "vitest";
import { plansOf } from "../../src/paper/plans.ts";
import { drawingSvg } from "../../src/paper/svg.ts";
import { drawn } from "../../src/workers/drawing.ts";
import { everyKind } from "../paper/every-kind.ts";

const asked = { kind: "sheets", instrument: everyKind, how: { size: "A4", issued: "2026-01-13" }, fouls: null } as const;

describe("the drawing worker", () => {
  it("lists every sheet, draws just those that are wanted, as the plans have them, and tells how far it is", () => {
    const told: number[] = [], plans = plansOf(everyKind, asked.how), wanted = plans.slice(3, 6).map((s) => s.id);
    const { list, sheets } = drawn({ ...asked, wanted }, (done) => told.push(done));
    expect(list).toEqual(plans.map(({ id, title, kind, mark }) => ({ id, title, kind, mark })));
    expect(sheets.map((s) => s.pages)).toEqual(plans.slice(3, 6).map((s) => s.pages.map(drawingSvg)));
    expect(told).toEqual([1 / 3, 2 / 3, 1]);
  });
  it("draws the first sheet where the one that was looked at has gone", () => {
    expect(drawn({ ...asked, wanted: ["wheel-gone"] }, () => {}).sheets.map((s) => s.id)).toEqual(["general"]);
  });
  it("says in how many places it fouls, counted where that is not known", () => {
    expect(drawn({ ...asked, wanted: [] }, () => {}).fouls).toBeGreaterThan(0);
    expect(drawn({ ...asked, fouls: 3, wanted: [] }, () => {}).sheets[0]!.pages[0]).toContain("fouls in 3 places");
  });
});
