// How fine the picture is drawn: by the screen's own pixels, within limits; again when it is carried to another screen.
import { useThree } from "@react-three/fiber";
import { useEffect } from "react";

/** Pixels drawn to one of the page, across. `plain`: every one of them is drawn by the processor. */
export const fineness = (plain: boolean): number => Math.min(Math.max(devicePixelRatio, 0.5), plain ? 1 : 2);

export function Fineness({ plain }: { readonly plain: boolean }) {
  const get = useThree((s) => s.get), set = useThree((s) => s.set);
  useEffect(() => {
    // Zooming and carrying a window to another screen are both told as a change of size.
    const again = () => {
      const { viewport, setDpr } = get(), fine = fineness(plain);
      if (viewport.initialDpr === fine) return;
      // The coarsening of slow pictures goes back to the first fineness.
      set({ viewport: { ...viewport, initialDpr: fine } });
      setDpr(fine);
    };
    window.addEventListener("resize", again);
    return () => window.removeEventListener("resize", again);
  }, [plain, get, set]);
  return null;
}
