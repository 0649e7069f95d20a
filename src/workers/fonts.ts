// The fonts that a PDF embeds, from beside the page; fetched only when files are made.
import figures from "dejavu-fonts-ttf/ttf/DejaVuSansMono.ttf?url";
import italic from "dejavu-fonts-ttf/ttf/DejaVuSerifCondensed-Italic.ttf?url";
import roman from "dejavu-fonts-ttf/ttf/DejaVuSerifCondensed.ttf?url";
import strong from "dejavu-fonts-ttf/ttf/DejaVuSansMono-Bold.ttf?url";
import type { Fonts } from "../paper/files/pdf.ts";

export async function pageFonts(): Promise<Fonts> {
  const faces = await Promise.all(Object.entries({ roman, italic, figures, strong }).map(async ([face, address]) => {
    const answer = await fetch(address);
    if (!answer.ok) throw new Error("the letters for it could not be had");
    return [face, new Uint8Array(await answer.arrayBuffer())] as const;
  }));
  return Object.fromEntries(faces) as unknown as Fonts;
}
