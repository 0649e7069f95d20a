// How wide a text stands, so that a page can be laid out alike everywhere. The room is that of a book roman (widths in
// thousandths of the type size, from memory of its published metrics) and of a face of one width for figures; where a
// printer's font is wider or narrower, it is set to this width.
import type { Face, LetterHeight } from "./drawing.ts";

/** Height of a capital over the type size. */
export const CAPITAL = 0.7;

/** mm of type size for a lettering height. */
export const typeSizeMm = (height: LetterHeight): number => height / CAPITAL;

const ONE_WIDTH = 602;
const OTHERS = 540;
const ROMAN: Readonly<Record<string, number>> = widths(
  "a500 b553 c444 d611 e479 f333 g556 h582 i291 j234 k556 l291 m883 n582 o546 p601 q560 r395 s424 t326 u603 v565 w834 x516 y556 z500 "
  + "A778 B611 C709 D774 E611 F556 G763 H832 I337 J333 K726 L611 M946 N831 O786 P604 Q786 R668 S525 T613 U778 V722 W1000 X667 Y667 Z667 "
  + "0500 1500 2500 3500 4500 5500 6500 7500 8500 9500 .250 ,250 :250 ;250 -333 –500 —1000 (333 )333 /400 '278 ’278 ‘278 “500 ”500 +606 −606 ±606 ×606 =606 ø556 °400 %840 ·250",
);

function widths(list: string): Record<string, number> {
  return Object.fromEntries([...list.split(" ").map((w) => [[...w][0]!, Number([...w].slice(1).join(""))] as const), [" ", 250] as const]);
}

/** mm. */
export function textWidthMm(text: string, height: LetterHeight, face: Face): number {
  const letters = [...text];
  const thousandths = face === "figures" || face === "strong"
    ? letters.length * ONE_WIDTH
    : letters.reduce((sum, letter) => sum + (ROMAN[letter] ?? OTHERS), 0) * (face === "italic" ? 0.94 : 1);
  return (thousandths / 1000) * typeSizeMm(height);
}

/** The text broken between words so that no line is wider than this; a word that is wider stands alone. */
export function brokenInto(text: string, widthMm: number, height: LetterHeight, face: Face): string[] {
  const lines: string[] = [];
  for (const word of text.split(" ")) {
    const last = lines.at(-1);
    if (last !== undefined && textWidthMm(`${last} ${word}`, height, face) <= widthMm) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}
