// Tells how the movement stands to the eye, at most ten times a second while it changes, and when it has come to rest.
import { sayView } from "./eye/view.ts";
import type { Stage } from "./stage.ts";

const TELL_MS = 100;
const REST_MS = 160;

export function attachSeeing(stage: Stage): () => void {
  let told = 0, tell: ReturnType<typeof setTimeout> | undefined, rest: ReturnType<typeof setTimeout> | undefined, last = "";
  const say = () => {
    tell = undefined;
    told = performance.now();
    const says = sayView(stage.eye.view()), key = `${says} ${stage.standing}`;
    if (key !== last) stage.props.onSeen?.({ says, standing: stage.standing });
    last = key;
  };
  stage.seen = () => {
    tell ??= setTimeout(say, Math.max(0, told + TELL_MS - performance.now()));
    clearTimeout(rest);
    rest = setTimeout(() => stage.rested?.(), REST_MS);
  };
  return () => {
    clearTimeout(tell);
    clearTimeout(rest);
    stage.seen = () => {};
  };
}
