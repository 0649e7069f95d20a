// How large a box on the page is, in pixels, followed as it changes.
import { type RefObject, useEffect, useRef, useState } from "react";

export interface Size { readonly width: number; readonly height: number }

export function useSize<E extends Element>(): readonly [RefObject<E | null>, Size | null] {
  const box = useRef<E>(null);
  const [size, setSize] = useState<Size | null>(null);
  useEffect(() => {
    const element = box.current;
    if (!element) return;
    const watch = new ResizeObserver(([entry]) => {
      if (!entry) return;
      const { width, height } = entry.contentRect;
      setSize((before) => (before?.width === width && before.height === height ? before : { width, height }));
    });
    watch.observe(element);
    return () => watch.disconnect();
  }, []);
  return [box, size];
}
