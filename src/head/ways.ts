// The two ways in which an arbor is dragged, and the four standing views, in the maker's words.
import type { DragWay, StandingView } from "../state/state.ts";

export const WAYS: readonly DragWay[] = ["in gear", "trying the depth"];
export const WAY_WORDS: Record<DragWay, string> = { "in gear": "In gear", "trying the depth": "Trying the depth" };

export const STANDINGS: readonly StandingView[] = ["dial side", "back side", "edge", "quarter"];
export const STANDING_WORDS: Record<StandingView, string> = { "dial side": "Dial side", "back side": "Back side", edge: "Edge", quarter: "Quarter" };
