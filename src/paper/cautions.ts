// The usual cautions of the trade, shown on every sheet that leads to what they warn of.

const CAUTIONS = {
  turning: "Work that turns throws swarf and catches sleeves and hair: guard it, wear eye protection, take chuck keys out.",
  belts: "Keep fingers from belts and blades, moving or not.",
  heat: "Hot metal does not look hot; water on it spits; work in moving air.",
  flux: "Flux and solder fumes harm; some solders hold lead or cadmium: use those that do not, and wash before eating.",
  acid: "Add acid to water, never water to acid; wear gloves and eye protection.",
  adhesive: "Retaining compound gives off fumes where it is heated.",
  foundry: "Molten brass is for a foundry: damp moulds explode, zinc fume harms, and silica sand dust harms lungs.",
  brass: "Free-cutting brass and its dust hold lead: no food by it, wet-wipe the bench.",
  saw: "A broken saw blade flies: wear eye protection.",
  silica: "Do not breathe dust of abrasives and moulding sand that hold silica.",
} as const;

export type Danger = keyof typeof CAUTIONS;

const DEFERS = "Follow the makers’ sheets and local rules; leave to licensed practice what belongs to it.";

/** In a settled order, each once, and to whom they defer; none for a sheet that leads to nothing of the kind. */
export function cautionsFor(...dangers: readonly Danger[]): string[] {
  const said = (Object.keys(CAUTIONS) as Danger[]).filter((d) => dangers.includes(d)).map((d) => CAUTIONS[d]);
  return said.length > 0 ? [...said, DEFERS] : [];
}

/** What a way of joining leads to. */
export const joinDangers = (by: string | undefined): readonly Danger[] =>
  by === "soft solder" ? ["heat", "flux"] : by === "silver solder" ? ["heat", "flux", "acid"] : by === "adhesive" ? ["adhesive"] : [];
