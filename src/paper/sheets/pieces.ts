// Sheets of flat parts: discs, slots, arms, ratchets, hands at full size, pillars, and dials.
import { handOutline, sineBarMm, type HousingFigures, type PieceFigures, type Pillar, type CotterFigures, type ArborFigures } from "../../../geometry/index.ts";
import { cautionsFor, joinDangers } from "../cautions.ts";
import { checkBar, levelDimension, uprightDimension } from "../dimension.ts";
import type { Draft } from "../draft.ts";
import type { Table } from "../drawing.ts";
import { arc, circle, cross, fill, hatch, line, outlineOn, type Page, polyline, rectangle, text, view } from "../page.ts";
import { figuresTable, ROW, ruled } from "../table.ts";
import { fixed, scaleFor, scaleWritten, short } from "../words.ts";
import { washerSays } from "./arbor.ts";

type Rows = readonly (readonly [string, string])[];
const rad = (deg: number): number => (deg * Math.PI) / 180;

export function pieceDraft(f: PieceFigures): Draft {
  const { piece } = f, rows = rowsOf(f), ratchet = f.ratchet;
  const tables: Table[] = [
    { id: `${piece.id}-figures`, title: `What to make, ${piece.id}`, columns: ["figure", "value"], rows },
    ...(ratchet ? [{ id: `${piece.id}-teeth`, title: "Faces of the teeth", columns: ["tooth", "at degrees"], rows: ratchet.faces.map((deg, i) => [i + 1, fixed(deg, 4)]) }] : []),
  ];
  const word = { disc: "Disc", slot: "Slot", arm: "Arm", pointer: "Hand", ratchet: "Ratchet" }[piece.kind];
  return {
    id: `${piece.kind}-${piece.id}`, number: piece.id, title: `${word} ${piece.id}`, kind: piece.kind === "ratchet" ? "ratchet" : piece.kind === "pointer" ? "hands" : "piece",
    subtitle: `${piece.name ? `${piece.name}, ` : ""}on arbor ${f.arbor}`, document: piece.kind === "pointer" ? "hand, for cutting" : "piece, for cutting", side: "DIAL SIDE", shows: f, tables,
    cautions: cautionsFor("saw", "brass", ...(ratchet ? ["turning"] as const : []), ...joinDangers(piece.join?.by), ...(/blued/.test(f.material) ? ["heat"] as const : [])),
    draw: (next) => {
      const page = next(), { left, right, top, bottom } = page.room, tableHeight = rows.length * ROW + 18, reach = reachOf(f);
      const room = Math.min(right - left - 36, top - bottom - tableHeight - 34);
      const scale = piece.kind === "pointer" ? scaleFor(Math.max(reach.along / (right - left - 44), piece.width / 40), 1, 10, true) : scaleFor(reach.across, room, 10, true);
      const x = (left + right) / 2 - (reach.middle * scale), y = (top + bottom + tableHeight) / 2;
      drawPiece(page, f, x, y, scale);
      if (piece.kind === "pointer" && reach.along <= right - left) fullSize(page, f, (left + right) / 2 - reach.middle, top - 16 - piece.width / 2);
      checkBar(page, left, bottom + 4);
      figuresTable(page, left, bottom + tableHeight - 4, right - left, "What to make", rows);
      if (ratchet) ruled(at(next), next, tables[1]!);
      return scaleWritten(scale);
    },
  };
}

const at = (next: () => Page): { page: Page; y: number } => { const page = next(); return { page, y: page.room.top }; };

function reachOf({ piece }: PieceFigures): { readonly across: number; readonly along: number; readonly middle: number } {
  if ("diameter" in piece) return { across: piece.diameter, along: piece.diameter, middle: 0 };
  const tail = piece.kind === "pointer" ? piece.tail : piece.width / 2, along = piece.length + tail;
  return { across: Math.max(along, piece.width), along, middle: (piece.length - tail) / 2 };
}

function rowsOf(f: PieceFigures): Rows {
  const { piece, seat } = f, own: Rows = (() => {
    switch (piece.kind) {
      case "disc": return [["Diameter", fixed(piece.diameter, 2)], ...(piece.windows ?? []).map((w, i) => [`Window ${i + 1}`, `ø${fixed(w.diameter, 2)} on R${fixed(w.radius, 3)} at ${fixed(w.angle, 3)}°`] as const)] as Rows;
      case "slot": return [["Diameter", fixed(piece.diameter, 2)], ["Slot, middle on", `R${fixed(piece.radius, 3)} at ${fixed(piece.angle, 3)}°`], ["Slot, long and wide", `${fixed(piece.length, 2)} × ${fixed(piece.width, 2)}`]] as Rows;
      case "arm": return [["Length from its axis", fixed(piece.length, 2)], ["Width", fixed(piece.width, 2)], ["Stands at", `${fixed(piece.angle, 3)}°`]] as Rows;
      case "pointer": return [["Length from its axis", fixed(piece.length, 2)], ["Tail", fixed(piece.tail, 2)], ["Width at the boss", fixed(piece.width, 2)], ["Points to, at input 0", `${fixed(piece.angle, 3)}°`]] as Rows;
      case "ratchet": return [["Teeth", String(piece.teeth)], ["Diameter", fixed(piece.diameter, 2)], ["Depth", fixed(piece.depth, 2)], ["Tip to tip, along the chord", fixed(f.ratchet!.tipChord, 3)],
        ["Back to face", `${fixed(f.ratchet!.backAngle, 2)}°`], ["Its click lets it pass", f.ratchet!.passes], ["Root circle", `R${fixed(f.ratchet!.rootRadius, 2)}`]] as Rows;
    }
  })();
  return [...own, ["Thickness", fixed(piece.thickness, 2)], ["Bore and fit", seat.collet ? `${seat.says}, on ${seat.collet}` : seat.says], ["Material, mass", `${f.material}${f.massG === null ? "" : `, ${fixed(f.massG, f.massG < 1 ? 2 : 1)} g`}`], ["Number off", "1"]];
}

function drawPiece(page: Page, f: PieceFigures, x: number, y: number, scale: number): void {
  const { piece } = f, bore = (f.seat.diameter / 2) * scale;
  view(page, "face", x, y, scale);
  if (piece.kind === "ratchet") ratchetFace(page, f, x, y, scale);
  else if ("diameter" in piece) {
    const r = (piece.diameter / 2) * scale;
    circle(page, x, y, r);
    cross(page, x, y, r + 3);
    levelDimension(page, x - r, y, x + r, y, y - r - 9, `ø${fixed(piece.diameter, 2)}`);
    if (piece.kind === "slot") slotFace(page, piece, x, y, scale);
    else for (const w of piece.windows ?? []) {
      const wx = x + w.radius * scale * Math.cos(rad(w.angle)), wy = y + w.radius * scale * Math.sin(rad(w.angle));
      circle(page, wx, wy, (w.diameter / 2) * scale);
      cross(page, wx, wy, (w.diameter / 2) * scale + 2);
    }
  } else bar(page, f, x, y, scale);
  if (bore > 0) circle(page, x, y, bore);
}

/** A hand as it shall be, to be laid on the metal. */
function fullSize(page: Page, { piece, seat }: PieceFigures, x: number, y: number): void {
  if (piece.kind !== "pointer") return;
  const at = view(page, "full size", x, y, 1), blade = outlineOn(at, handOutline(piece.length, piece.tail, piece.width, 0.01));
  const r = seat.diameter / 2, bore = Array.from({ length: 32 }, (_, i) => [x + r * Math.cos((i * Math.PI) / 16), y + r * Math.sin((i * Math.PI) / 16)]).flat();
  fill(page, r > 0 ? [blade, bore] : [blade]);
  text(page, page.room.left, page.room.top - 5, "full size", { face: "italic", layer: "dimension" });
}

/** Hands and arms lie along the sheet. */
function bar(page: Page, { piece }: PieceFigures, x: number, y: number, scale: number): void {
  if (piece.kind !== "pointer" && piece.kind !== "arm") return;
  const h = (piece.width / 2) * scale, l = piece.length * scale;
  if (piece.kind === "arm") {
    polyline(page, [x, y + h, x + l, y + h, x + l, y - h, x, y - h], false);
    arc(page, x, y, h, 90, 270);
  } else {
    const t = piece.tail * scale;
    rectangle(page, x - t, y - h, x + l, y + h, "double-dot chain");
    polyline(page, outlineOn((mx, my) => [x + mx * scale, y + my * scale], handOutline(piece.length, piece.tail, piece.width, 0.01)), true);
    levelDimension(page, x - t, y - h, x, y - h, y - h - 9, fixed(piece.tail, 2), "left");
  }
  levelDimension(page, x, y - h, x + l, y - h, y - h - 9, fixed(piece.length, 2));
  uprightDimension(page, x + l, y - h, x + l, y + h, x + l + 8, fixed(piece.width, 2));
  line(page, x - (piece.kind === "pointer" ? piece.tail * scale : h) - 3, y, x + l + 3, y, "chain");
  line(page, x, y - h - 3, x, y + h + 3, "chain");
}

function slotFace(page: Page, piece: Extract<PieceFigures["piece"], { kind: "slot" }>, x: number, y: number, scale: number): void {
  const c = Math.cos(rad(piece.angle)), s = Math.sin(rad(piece.angle)), w = (piece.width / 2) * scale;
  const on = (r: number, off: number): readonly [number, number] => [x + r * scale * c - off * s, y + r * scale * s + off * c];
  const r0 = piece.radius - piece.length / 2 + piece.width / 2, r1 = piece.radius + piece.length / 2 - piece.width / 2;
  for (const side of [w, -w]) line(page, ...on(r0, side), ...on(r1, side), "wide");
  arc(page, ...on(r1, 0), w, piece.angle - 90, piece.angle + 90);
  arc(page, ...on(r0, 0), w, piece.angle + 90, piece.angle + 270);
}

function ratchetFace(page: Page, { ratchet: r }: PieceFigures, x: number, y: number, scale: number): void {
  if (!r) return;
  const way = r.passes === "clockwise" ? 1 : -1;
  const points = Array.from({ length: r.teeth }, (_, i) => rad(90 + (way * 360 * i) / r.teeth)).flatMap((a) => [
    x + r.rootRadius * scale * Math.cos(a), y + r.rootRadius * scale * Math.sin(a), x + r.tipRadius * scale * Math.cos(a), y + r.tipRadius * scale * Math.sin(a)]);
  polyline(page, points, true);
  circle(page, x, y, r.rootRadius * scale, "chain");
  cross(page, x, y, r.tipRadius * scale + 3);
  levelDimension(page, x - r.tipRadius * scale, y, x + r.tipRadius * scale, y, y - r.tipRadius * scale - 9, `ø${fixed(2 * r.tipRadius, 2)}`);
}

export function pillarsDraft(pillars: readonly Pillar[]): Draft {
  const table: Table = {
    id: "pillars", title: "Pillars", columns: ["pillar", "ø", "long between plates", "tapped M", "x", "y"],
    rows: pillars.map((p) => [p.id, fixed(p.diameter, 2), fixed(p.to - p.from, 2), fixed(0.375 * p.diameter, 1), fixed(p.x, 4), fixed(p.y, 4)]),
  };
  return {
    id: "pillars", number: "/PILLARS", title: "Pillars", kind: "piece", subtitle: "turned between shoulders to one length, all in one setting", document: "pillars, for turning", shows: pillars, tables: [table], cautions: cautionsFor("turning", "brass"),
    draw: (next) => {
      const page = next(), { left, right, top } = page.room, [p] = pillars;
      if (!p) return "1 : 1";
      const long = p.to - p.from, scale = scaleFor(Math.max(long / (right - left - 60), p.diameter / 50), 1, 5, true), x = (left + right) / 2 - (long * scale) / 2, y = top - 40, h = (p.diameter / 2) * scale;
      view(page, "pillar", x, y, scale);
      rectangle(page, x, y - h, x + long * scale, y + h);
      line(page, x - 5, y, x + long * scale + 5, y, "chain");
      levelDimension(page, x, y + h, x + long * scale, y + h, y + h + 9, fixed(long, 2));
      uprightDimension(page, x + long * scale, y - h, x + long * scale, y + h, x + long * scale + 10, `ø${fixed(p.diameter, 2)}`);
      ruled({ page, y: y - h - 16 }, next, table);
      return scaleWritten(scale);
    },
  };
}

export function housingDraft(h: HousingFigures): Draft {
  const { fabricated: f, cast: c } = h;
  const made: Rows = [["Strip, neutral line", fixed(f.stripNet, 2)], ["Allowed for the joint", fixed(f.joint, 2)], ["Strip to cut, long", fixed(f.stripLength, 2)], ["Strip to cut, wide", fixed(f.stripWidth, 2)], ["Strip and disc, thick", fixed(f.discThickness, 2)],
    ["Disc to cut", `ø${fixed(f.discDiameter, 2)}`], ["Disc as fitted", `ø${fixed(f.discFitted, 2)}`], ["Gap for solder, a side", fixed(f.solderGap, 2)], ["Left to trim, each edge", fixed(f.trim, 2)], ["Finished, stock", `${fixed(f.massG, 0)} g, ${fixed(f.stockMassG, 0)} g`]];
  const cast: Rows = [["Contraction", `${fixed(100 * c.contraction, 2)} %`], ["Pattern, outside", fixed(c.patternOutside, 2)], ["at its mouth, with draft", `${fixed(c.patternMouth, 2)}, ${short(c.draft)}°`], ["Pattern, inside", fixed(c.patternInside, 2)], ["Pattern, deep", fixed(c.patternDepth, 2)],
    ["To machine, each face", fixed(c.machining, 2)], ["Holding boss", `ø${c.boss.diameter} × ${c.boss.length}`], ["Register spigot", `ø${c.spigot.diameter} × ${c.spigot.length}`], ["Casting, rough", `ø${fixed(c.castOutside, 2)}, floor ${fixed(c.castFloor, 2)}`], ["Finished, cast", `${fixed(c.finishedMassG, 0)} g, ${fixed(c.castMassG, 0)} g`], ["Metal to melt", `${fixed(c.toMeltG, 0)} g`]];
  return {
    id: "housing", number: "/CASE", title: "Case", kind: "housing", subtitle: "fabricated from disc and hoop, or turned from a casting", document: "case, both ways", shows: h,
    tables: [{ id: "case-fabricated", title: "Fabricated", columns: ["figure", "value"], rows: made }, { id: "case-cast", title: "Turned from a casting", columns: ["figure", "value"], rows: cast, source: "contraction: Dooley; the rest common practice" }],
    cautions: cautionsFor("turning", "heat", "flux", "acid", "foundry", "silica", "brass"),
    draw: (next) => {
      const page = next(), { left, right, top, bottom } = page.room, column = (right - left - 8) / 2;
      const tall = Math.max(made.length, cast.length) * ROW + 12, high = h.depth + h.wall, highCast = c.castDepth + c.spigot.length + c.boss.length;
      const scale = scaleFor(Math.max(c.castOutside / (right - left - 60), (high + highCast) / (top - bottom - tall - DIMENSIONS)), 1, 2, true), x = (left + right) / 2;
      const floor = top - 12 - h.depth * scale, floorCast = floor - h.wall * scale - 26 - (h.depth + c.machining) * scale;
      fabricatedSection(page, h, x, floor, scale);
      castSection(page, h, x, floorCast, scale);
      text(page, left, top - 5, "Fabricated", { face: "italic", layer: "dimension" });
      text(page, left, floorCast + (h.depth + c.machining) * scale, "Turned from a casting", { face: "italic", layer: "dimension" });
      text(page, left, bottom + tall + 4, `The plate that closes it: ø${fixed(h.plate.diameter, 2)}, with a step ø${fixed(h.plate.step, 2)} that enters ${fixed(h.plate.entry, 2)}.`, { face: "italic" });
      figuresTable(page, left, bottom + tall, column, "Fabricated", made);
      figuresTable(page, left + column + 8, bottom + tall, column, "Turned from a casting", cast);
      return scaleWritten(scale);
    },
  };
}

/** mm of paper that the dimensions of both sections take. */
const DIMENSIONS = 56;

/** Hoop and disc cut through, with the gap for solder between them. */
function fabricatedSection(page: Page, h: HousingFigures, x: number, floor: number, scale: number): void {
  const r = (h.outsideDiameter / 2) * scale, i = (h.insideDiameter / 2) * scale, disc = (h.fabricated.discFitted / 2) * scale, base = floor - h.wall * scale, rim = floor + h.depth * scale;
  view(page, "case, fabricated", x, floor, scale);
  for (const side of [-1, 1]) {
    rectangle(page, x + side * r, base, x + side * i, rim);
    hatch(page, [[x + side * r, base, x + side * i, base, x + side * i, rim, x + side * r, rim]], 45, 1.2);
  }
  rectangle(page, x - disc, base, x + disc, floor);
  hatch(page, [[x - disc, base, x + disc, base, x + disc, floor, x - disc, floor]], 135, 1.2);
  line(page, x, base - 4, x, rim + 4, "chain");
  levelDimension(page, x - r, base, x + r, base, base - 9, `ø${fixed(h.outsideDiameter, 2)}`);
  levelDimension(page, x - i, rim, x + i, rim, rim + 7, `ø${fixed(h.insideDiameter, 2)}`);
  uprightDimension(page, x + i, floor, x + i, rim, x + r + 9, fixed(h.depth, 2));
}

/** What is turned, within the casting that it is turned from, with its register spigot and holding boss (double-dot chain, ISO 128-2). */
function castSection(page: Page, h: HousingFigures, x: number, floor: number, scale: number): void {
  const c = h.cast, r = (h.outsideDiameter / 2) * scale, i = (h.insideDiameter / 2) * scale, base = floor - h.wall * scale, rim = floor + h.depth * scale;
  view(page, "case, cast", x, floor, scale);
  const section = [x - r, base, x + r, base, x + r, rim, x + i, rim, x + i, floor, x - i, floor, x - i, rim, x - r, rim];
  polyline(page, section, true);
  hatch(page, [section], 45, 1.2);
  const out = (c.castOutside / 2) * scale, inside = (c.castInside / 2) * scale, low = base - c.machining * scale, high = low + c.castDepth * scale, within = low + c.castFloor * scale;
  const spigot = (c.spigot.diameter / 2) * scale, boss = (c.boss.diameter / 2) * scale, under = low - c.spigot.length * scale, end = under - c.boss.length * scale;
  polyline(page, [
    x - out, high, x - out, low, x - spigot, low, x - spigot, under, x - boss, under, x - boss, end, x + boss, end, x + boss, under, x + spigot, under, x + spigot, low, x + out, low, x + out, high,
    x + inside, high, x + inside, within, x - inside, within, x - inside, high,
  ], true, "double-dot chain");
  line(page, x, end - 2, x, high + 4, "chain");
  levelDimension(page, x - out, high, x + out, high, high + 7, `ø${fixed(c.castOutside, 2)}`);
  levelDimension(page, x - boss, end, x + boss, end, end - 7, `ø${fixed(c.boss.diameter, 0)}`);
}

/** The square from the side, as long as the cotter, with its slot; gives the y under it. */
function squareView(page: Page, c: CotterFigures, x: number, middle: number): number {
  const scale = scaleFor(Math.max(c.across / 24, c.squareLength / 70), 1, 10, true), l = c.squareLength * scale, wide = (c.across / 2) * scale, narrow = (c.narrow / 2) * scale;
  view(page, "square", x, middle, scale);
  polyline(page, [x, middle - wide, x + l, middle - narrow, x + l, middle + narrow, x, middle + wide], true);
  const h = (c.slotHeight / 2) * scale, w = (c.slotWidth / 2) * scale;
  rectangle(page, x + l / 2 - h, middle - w, x + l / 2 + h, middle + w);
  line(page, x - 4, middle, x + l + 4, middle, "chain");
  levelDimension(page, x, middle + wide, x + l, middle + narrow, middle + wide + 6, fixed(c.squareLength, 2));
  uprightDimension(page, x, middle - wide, x, middle + wide, x - 8, fixed(c.across, 2));
  uprightDimension(page, x + l, middle - narrow, x + l, middle + narrow, x + l + 9, fixed(c.narrow, 3));
  text(page, x + l + 16, middle - 1, `square, ${scaleWritten(scale)}`, { face: "italic", layer: "dimension" });
  return middle - wide;
}

export function cotterDraft(id: string, arbor: ArborFigures, c: CotterFigures): Draft {
  const rows: Rows = [["Square over flats, wide end", fixed(c.across, 2)], ["Taper, each side", `${short(c.taper)}°`], ["Set by, under a 100 mm sine bar", fixed(sineBarMm(c.taper), 3)], ["Slot, wide and high", `${fixed(c.slotWidth, 2)} × ${fixed(c.slotHeight, 2)}`],
    ["Cotter, thick", fixed(c.thick, 2)], ["Cotter, small and large end", `${fixed(c.highSmall, 3)} to ${fixed(c.highLarge, 3)}`], ["Cotter, long", fixed(c.length, 2)], ["Cotter tapers", `1 in ${c.cotterTaper}`], ["It draws up at most", fixed(c.drawsUp, 3)],
    ["0.01 off over flats moves the part", fixed(c.homePerHundredth, 3)], ["and sends the cotter on by", fixed(c.cotterPerHundredth, 2)], ["0.01 of looseness turns, each way", `${fixed(c.playDeg, 3)}°`], [`For ${fixed(arbor.shake.wanted, 2)} of endshake`, washerSays(arbor.shake)]];
  return {
    id: `fit-${id}`, number: `/F-${id}`, title: `Cottered square ${id}`, kind: "fit", subtitle: `on arbor ${arbor.id}`, document: "fit of square, slot and cotter", shows: { id, arbor: arbor.id, shake: arbor.shake, c },
    tables: [{ id: `${id}-cotter`, title: "Square, slot and cotter", columns: ["figure", "value"], rows }], cautions: cautionsFor("saw", "turning"),
    draw: (next) => {
      const page = next(), { left, right, top } = page.room, scale = scaleFor(c.length, 110, 10, true), x = (left + right) / 2 - (c.length * scale) / 2, y = top - 40;
      view(page, "cotter", x, y, scale);
      polyline(page, [x, y, x + c.length * scale, y, x + c.length * scale, y + c.highLarge * scale, x, y + c.highSmall * scale], true);
      levelDimension(page, x, y, x + c.length * scale, y, y - 8, fixed(c.length, 2));
      uprightDimension(page, x, y, x, y + c.highSmall * scale, x - 8, fixed(c.highSmall, 3));
      uprightDimension(page, x + c.length * scale, y, x + c.length * scale, y + c.highLarge * scale, x + c.length * scale + 9, fixed(c.highLarge, 3));
      const square = squareView(page, c, x, y - 52);
      figuresTable(page, left, square - 14, right - left, "Square, slot and cotter", rows);
      return scaleWritten(scale);
    },
  };
}
