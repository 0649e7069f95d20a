// A PDF opened by another reader, and the boxes of its paths in mm on the paper.
import { getDocumentProxy, getResolvedPDFJS } from "unpdf";

// The reader wants a method of newer machines.
const buffers = ArrayBuffer.prototype as ArrayBuffer & { transferToFixedLength?: (length?: number) => ArrayBuffer };
buffers.transferToFixedLength ??= function (this: ArrayBuffer, length = this.byteLength) { return this.slice(0, length); };

export const openPdf = (bytes: Uint8Array) => getDocumentProxy(bytes.slice());
type Page = Awaited<ReturnType<Awaited<ReturnType<typeof openPdf>>["getPage"]>>;

export interface PathBox { readonly x: number; readonly y: number; readonly width: number; readonly height: number }

export async function boxesOn(page: Page): Promise<PathBox[]> {
  const { OPS } = await getResolvedPDFJS(), { fnArray, argsArray } = await page.getOperatorList();
  let scale = 1;
  const boxes: PathBox[] = [];
  fnArray.forEach((fn, i) => {
    const args = argsArray[i] as unknown[];
    if (fn === OPS.transform) scale = (args[0] as number) * (25.4 / 72);
    if (fn !== OPS.constructPath || !args[2]) return;
    const [x0, y0, x1, y1] = [...(args[2] as Float32Array)].map((v) => v * scale) as [number, number, number, number];
    boxes.push({ x: (x0 + x1) / 2, y: (y0 + y1) / 2, width: x1 - x0, height: y1 - y0 });
  });
  return boxes;
}
