// The formats in which an instrument leaves the workshop.

export const FORMATS = ["PDF", "SVG", "DXF", "STL", "3MF", "glTF", "CSV"] as const;
export type Format = (typeof FORMATS)[number];
