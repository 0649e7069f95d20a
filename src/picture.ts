// The first picture: what it does not need is not asked for before it is drawn.

let drawn: Promise<unknown> | null = null;

/** Settles when the movement's picture has been drawn, or has failed to be. */
export const pictureDrawn = (): Promise<unknown> => (drawn ??= import("../scenes/MovementView.tsx").catch(() => null)
  .then(() => new Promise((done) => { requestAnimationFrame(() => requestAnimationFrame(done)); })));
