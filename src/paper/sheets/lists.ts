// Sheets that are tables: the train with its errors, putting together, parts and stock, cutters, setting up.
import { DENSITY_SOURCE, type CutterLine, type ListedPart, type SettingLine, type StockLine, type TrainLine } from "../../../geometry/index.ts";
import { cautionsFor } from "../cautions.ts";
import type { Draft } from "../draft.ts";
import type { SheetKind, Table } from "../drawing.ts";
import { brokenInto } from "../lettering.ts";
import { line, text } from "../page.ts";
import { ruledWithSource } from "../table.ts";
import { fixed, short, signed } from "../words.ts";

function tablesDraft(what: Pick<Draft, "id" | "number" | "title" | "subtitle" | "document" | "tables" | "cautions"> & { readonly kind: SheetKind }): Draft {
  return {
    // Figures as they are written: what is finer is not to be seen on a list.
    ...what, shows: { subtitle: what.subtitle, tables: what.tables.map(({ columns, rows }) => ({ columns, rows })) },
    draw: (next) => {
      const page = next();
      let at = { page, y: page.room.top };
      for (const table of what.tables) at = ruledWithSource(at, next, table);
      return "–";
    },
  };
}

export interface DisplayLine { readonly name: string; readonly arbor: string; readonly days: number | null; readonly wanted: number | null; readonly degreesPerYear: number | null; readonly yearsToOneDegree: number | null; readonly sense: string | null }

export const trainDraft = (train: readonly TrainLine[], displays: readonly DisplayLine[]): Draft => tablesDraft({
  id: "train", number: "/TRAIN", title: "Train and errors", kind: "train", subtitle: "rates are turns for one turn of the input, exact", document: "train table", cautions: [],
  tables: [
    { id: "train", title: "Train", columns: ["driver", "teeth", "driven", "teeth", "distance", "rate", "days a turn"], rows: train.map((t) => [t.driver, t.driverCount, t.driven, t.drivenCount, fixed(t.distance, 3), t.rate, t.days === null ? "" : short(t.days, 6)]) },
    { id: "errors", title: "Errors of the displays", columns: ["display", "on", "days", "wanted", "degrees a year", "years to 1°", "sense"],
      rows: displays.map((d) => [d.name, d.arbor, d.days === null ? "" : short(d.days, 6), d.wanted === null ? "" : short(d.wanted, 6), d.degreesPerYear === null ? "" : signed(d.degreesPerYear, 4), d.yearsToOneDegree === null ? "" : short(d.yearsToOneDegree, 1), d.sense ?? ""]) },
  ].filter((t) => t.rows.length > 0),
});

export interface StepLine { readonly title: string; readonly says: string; readonly ids: readonly string[] }

export function assemblyDraft(steps: readonly StepLine[]): Draft {
  const table: Table = { id: "assembly", title: "Putting together", columns: ["step", "what goes in", "how"], rows: steps.map((s, i) => [i + 1, s.ids.join(" "), s.says]) };
  return {
    id: "assembly", number: "/ORDER", title: "Putting together", kind: "assembly", subtitle: "each as late as nothing before it needs", document: "order of putting together", shows: steps, tables: [table],
    cautions: [],
    draw: (next) => {
      let page = next(), y = page.room.top;
      steps.forEach((s, i) => {
        const { left, right } = page.room, lines = brokenInto(s.says, right - left - 14, 2.5, "roman"), tall = 7 + lines.length * 4;
        if (y - tall < page.room.bottom) { page = next(); y = page.room.top; }
        text(page, left, y - 5, String(i + 1), { face: "italic", height: 3.5 });
        text(page, left + 12, y - 5, s.title, { face: "strong", within: right - left - 14 });
        lines.forEach((words, k) => text(page, left + 12, y - 9.4 - 4 * k, words));
        y -= tall;
        line(page, left, y - 0.6, right, y - 0.6, "narrow", "table");
      });
      return "–";
    },
  };
}

export const partsDraft = (parts: readonly ListedPart[], stock: readonly StockLine[]): Draft => tablesDraft({
  id: "parts", number: "/PARTS", title: "Parts, material and stock", kind: "parts", subtitle: `${parts.length} parts, ${fixed(parts.reduce((sum, p) => sum + (p.massG ?? 0), 0) / 1000, 2)} kg`, document: "parts list", cautions: [],
  tables: [
    { id: "parts", title: "Parts", columns: ["part", "what", "name", "on", "material", "stock", "g"], rows: parts.map((p) => [p.id, p.what, p.name ?? "", p.on ?? "", p.material, p.stock, p.massG === null ? "" : fixed(p.massG, 1)]) },
    { id: "stock", title: "Stock to buy", columns: ["material", "stock", "mm in all", "pieces", "g when made"], rows: stock.map((s) => [s.material, s.stock, s.length ?? "", s.pieces, fixed(s.massG, 1)]), source: DENSITY_SOURCE },
  ],
});

export const cuttersDraft = (cutters: readonly CutterLine[], drills: readonly (readonly [number, number])[]): Draft => tablesDraft({
  id: "cutters", number: "/TOOLS", title: "Cutters and tools", kind: "cutters", subtitle: "which are wanted, and which are owned", document: "cutter and tool list", cautions: cautionsFor("turning", "belts"),
  tables: [
    { id: "cutters", title: "Cutters", columns: ["form", "module", "cutter", "owned", "for"], rows: cutters.map((c) => [c.form, short(c.module), c.says, c.owned ? "yes" : "no", c.parts.join(" ")]) },
    { id: "drills", title: "Drills and reamers, from the hole tables", columns: ["ø", "holes"], rows: drills.map(([d, n]) => [fixed(d, 2), n]) },
  ].filter((t) => t.rows.length > 0),
});

export function settingDraft(names: readonly string[], epoch: string | null, lines: readonly SettingLine[]): Draft {
  return tablesDraft({
    id: "setting", number: "/SET", title: "Setting up", kind: "setting", subtitle: epoch ? `set at ${epoch.slice(0, 16).replace("T", " ")}, the input at 0` : "from the input at 0", document: "setting-up table", cautions: [],
    tables: [{
      id: "setting", title: "What each display shows, in its own divisions", columns: [...(epoch ? ["date"] : []), "days", "turns", ...names],
      rows: lines.map((l) => [...(epoch ? [dateAfter(epoch, l.days)] : []), short(l.days), short(l.turns, 3), ...l.readings.map((r) => fixed(r, 2))]),
    }],
  });
}

function dateAfter(epoch: string, days: number): string {
  const at = Date.parse(epoch);
  return Number.isNaN(at) ? "" : new Date(at + days * 86_400_000).toISOString().slice(0, 10);
}

