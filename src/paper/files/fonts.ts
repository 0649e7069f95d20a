// The fonts that a PDF embeds, as files of a kept package (DejaVu 2.37, free to embed): wide enough in letters for names
// in most alphabets.
import type { Face } from "../drawing.ts";

export const FONT_FILES: Readonly<Record<Face, string>> = {
  roman: "dejavu-fonts-ttf/ttf/DejaVuSerifCondensed.ttf",
  italic: "dejavu-fonts-ttf/ttf/DejaVuSerifCondensed-Italic.ttf",
  figures: "dejavu-fonts-ttf/ttf/DejaVuSansMono.ttf",
  strong: "dejavu-fonts-ttf/ttf/DejaVuSansMono-Bold.ttf",
};
