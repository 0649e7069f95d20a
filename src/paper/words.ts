// How figures are written on paper.

/** Fixed places, with a real minus sign and never minus nothing. */
export function fixed(value: number, places: number): string {
  const written = Math.abs(value).toFixed(places);
  return value < 0 && Number(written) !== 0 ? `−${written}` : written;
}

/** For files: to so many parts of one (at most a million), without a minus before nothing and never with an exponent. */
export const inParts = (value: number, parts: number): string => String(Math.round(value * parts) / parts || 0);
export const thousandths = (value: number): string => inParts(value, 1e3);

/** As few places as say it, at most so many. */
export function short(value: number, places = 3): string {
  const written = fixed(value, places);
  return written.includes(".") ? written.replace(/\.?0+$/, "") : written;
}

/** With its sign. */
export const signed = (value: number, places: number): string => `${value < 0 && Number(value.toFixed(places)) !== 0 ? "−" : "+"}${Math.abs(value).toFixed(places)}`;

const SCALES = [50, 20, 10, 5, 2, 1, 1 / 2, 1 / 5, 1 / 10, 1 / 20, 1 / 50, 1 / 100];
/** Between them, for sheets that would otherwise stand half empty: common practice for small work. */
const MORE = [50, 20, 10, 5, 4, 3, 2.5, 2, 1.5, 1, 1 / 1.5, 1 / 2, 1 / 2.5, 1 / 5, 1 / 10, 1 / 20, 1 / 50, 1 / 100];

/** The largest scale of ISO 5455 at which so many mm of metal fit in so many of paper. */
export function scaleFor(metalMm: number, paperMm: number, most = 50, fine = false): number {
  return (fine ? MORE : SCALES).find((s) => s <= most && metalMm * s <= paperMm + 1e-9) ?? paperMm / Math.max(metalMm, 1e-9);
}

export const scaleWritten = (scale: number): string => (scale >= 1 ? `${short(scale, 1)} : 1` : `1 : ${short(1 / scale, 1)}`);
