// Working without a network: the page asks for its service worker after the first picture, hears of a newer build, and
// opens it only once all that was done is kept.
import type { Bench } from "../state/hooks.ts";

/** Nothing is served by it while the viewer is being developed, or where the browser has none. */
export async function workOffline({ store }: Bench): Promise<void> {
  if (!import.meta.env.PROD || !("serviceWorker" in navigator)) return;
  const worked = navigator.serviceWorker.controller !== null;
  const registration = await navigator.serviceWorker.register(`${import.meta.env.BASE_URL}offline.js`, { scope: import.meta.env.BASE_URL });
  whenIdle(() => void navigator.serviceWorker.ready.then(({ active }) => active?.postMessage("take in the rest")));
  const say = () => { if (registration.waiting && worked) store.setState({ newer: true }); };
  say();
  registration.addEventListener("updatefound", () => {
    const coming = registration.installing;
    coming?.addEventListener("statechange", () => { if (coming.state === "installed") say(); });
  });
}

/** ms after the first picture, at the least: by then the maker sees what the page is about. */
const STANDS_MS = 5000;

const whenIdle = (call: () => void): void => {
  setTimeout(() => ("requestIdleCallback" in window ? requestIdleCallback(call) : call()), STANDS_MS);
};

/** Every step is on the shelf before the page is loaded afresh; where the browser keeps nothing, it is said and nothing is done. */
export async function openNewer({ store, keeper, actions }: Bench): Promise<void> {
  actions.keep();
  await keeper.settled();
  if (store.getState().notKept !== null) return actions.set({ saying: "Save your work to a file first: this browser does not keep it." });
  const registration = await navigator.serviceWorker.getRegistration();
  if (!registration?.waiting) return location.reload();
  navigator.serviceWorker.addEventListener("controllerchange", () => location.reload(), { once: true });
  registration.waiting.postMessage("take over");
}
