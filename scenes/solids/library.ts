// The shapes in use, one for each different content: parts that are alike share one, a drag that only moves arbors
// makes none, and what is no longer asked for is disposed. A movement is laid out between `open` and `close`.

export interface Library<Shape> {
  /** The shape for a content key, made only if the last layout had none. */
  take(key: string, make: () => Shape): Shape;
  /** Ends a layout: disposes what it did not take. */
  close(): void;
  /** Disposes everything. */
  empty(): void;
  readonly size: number;
}

export function createLibrary<Shape extends { dispose(): void }>(): Library<Shape> {
  let shelf = new Map<string, Shape>(), taken = new Map<string, Shape>();
  const dispose = (shapes: Map<string, Shape>, keep: Map<string, Shape>) => {
    for (const [key, shape] of shapes) if (!keep.has(key)) shape.dispose();
  };
  return {
    take(key, make) {
      const shape = taken.get(key) ?? shelf.get(key) ?? make();
      taken.set(key, shape);
      return shape;
    },
    close() {
      dispose(shelf, taken);
      [shelf, taken] = [taken, new Map()];
    },
    empty() {
      dispose(new Map([...shelf, ...taken]), new Map());
      [shelf, taken] = [new Map(), new Map()];
    },
    get size() { return shelf.size + taken.size; },
  };
}
