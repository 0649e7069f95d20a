// The eye of one movement view: where it stands now, and a glide to where it is sent. Owns its view; everything else
// reads it in the frame loop.
import { between, type View } from "./view.ts";

export const TURN_MS = 450;

export interface Eye {
  view(): View;
  /** By hand: at once, and any glide is over. */
  set(view: View): void;
  /** Eased, or at once where motion is to be still. */
  glideTo(view: View, still: boolean): void;
  /** Moves a glide on to this moment; true while there is more of it. */
  step(nowMs: number): boolean;
  /** Rises whenever the view changed. */
  changes(): number;
}

export function createEye(first: View): Eye {
  let view = first, changes = 0;
  let glide: { readonly from: View; readonly to: View; startMs: number | null } | null = null;
  return {
    view: () => view,
    changes: () => changes,
    set(to) {
      glide = null;
      view = to;
      changes++;
    },
    glideTo(to, still) {
      if (still) this.set(to);
      else glide = { from: view, to, startMs: null };
    },
    step(nowMs) {
      if (!glide) return false;
      glide.startMs ??= nowMs;
      const t = (nowMs - glide.startMs) / TURN_MS;
      view = between(glide.from, glide.to, t);
      changes++;
      if (t >= 1) glide = null;
      return glide !== null;
    },
  };
}
