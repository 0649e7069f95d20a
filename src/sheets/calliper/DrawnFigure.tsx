// A figure on a drawing, on a ground of its own so that lines behind it do not cut it.

/** Pixels. */
const ADVANCE = 7.25, HEIGHT = 14;

export function DrawnFigure({ x, y, text, end = false }: { readonly x: number; readonly y: number; readonly text: string; readonly end?: boolean }) {
  const width = ADVANCE * text.length, from = end ? x - width : x;
  return (
    <>
      <rect className="ground-of-text" x={from - 2} y={y - HEIGHT + 3} width={width + 4} height={HEIGHT} />
      <text className="figure-text" x={from} y={y}>{text}</text>
    </>
  );
}
