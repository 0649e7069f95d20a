import { describe, expect, it } from "vitest";
import type { Instrument } from "../../geometry/index.ts";
import { dateInWords, epochMs, grouped, standsFor } from "../../src/state/dates.ts";

const instrument = (epoch?: string, days = 1): Instrument => ({
  endshake: 1, name: "Slipway clock", frame: { plates: [], pillars: [] }, arbors: [], engagements: [],
  input: { arbor: "A", days, sense: "clockwise" },
  displays: [{ id: "d", name: "Day", arbor: "A", ...(epoch === undefined ? {} : { epoch }) }],
});

describe("what turns stand for", () => {
  it("is a date from the epoch of a display: twelve and a half days after the new year is the 13th at noon", () => {
    expect(standsFor(instrument("2026-01-01"), 12.5)).toBe("Tue 13 January 2026, 12:00");
    expect(standsFor(instrument("2026-01-01"), 12.5, "short")).toBe("Tue 13 Jan 2026, 12:00");
  });

  it("reads an epoch without a zone as universal time, and counts days by the input's own", () => {
    expect(epochMs(instrument("2026-01-01T06:00"))).toBe(Date.UTC(2026, 0, 1, 6));
    expect(standsFor(instrument("2026-01-01", 7), 2)).toBe("Thu 15 January 2026, 00:00");
  });

  it("is so many days where there is no epoch that can be read", () => {
    expect(standsFor(instrument(), 2)).toBe("2.00 days");
    expect(standsFor(instrument("spring tide"), -1)).toBe("−1.00 day");
  });

  it("falls back to days beyond the calendar", () => {
    expect(dateInWords(9e15)).toBeNull();
    expect(standsFor(instrument("2026-01-01"), 1e9)).toBe("1,000,000,000.00 days");
  });

  it("writes a real minus, and none before a nought", () => {
    expect(grouped(-1234.5, 1)).toBe("−1,234.5");
    expect(grouped(-0.001, 1)).toBe("0.0");
  });
});
