// The service worker: on installing it takes in every file of its build, and afterwards answers from what it took in. A
// newer build waits until no tab is open or the maker asks for it. The files of the build before stay, for tabs that still
// show it.

/** Put in when it is built: every file of the build, and a mark that is another where any of them is. */
declare const FILES: readonly string[];
declare const MARK: string;

/** What this file uses of a service worker's surroundings. */
interface Surroundings {
  addEventListener(type: "install" | "activate", hear: (event: { waitUntil(done: Promise<unknown>): void }) => void): void;
  addEventListener(type: "fetch", hear: (event: { readonly request: Request; respondWith(answer: Promise<Response>): void }) => void): void;
  addEventListener(type: "message", hear: (event: { readonly data: unknown }) => void): void;
  skipWaiting(): Promise<void>;
  readonly clients: { claim(): Promise<void> };
  readonly registration: { readonly scope: string };
}
const here = self as unknown as Surroundings;

const PREFIX = "endshake-";
const STORE = PREFIX + MARK;
const PAGE = "index.html";
const address = (file: string): string => new URL(file, here.registration.scope).href;

here.addEventListener("install", (event) => {
  event.waitUntil(caches.open(STORE).then((store) => store.addAll(FILES.map((file) => new Request(address(file), { cache: "reload" })))));
});

here.addEventListener("activate", (event) => {
  event.waitUntil(caches.keys().then(async (names) => {
    const before = names.filter((name) => name.startsWith(PREFIX) && name !== STORE);
    await Promise.all(before.slice(0, -1).map((name) => caches.delete(name)));
    await here.clients.claim();
  }));
});

here.addEventListener("message", ({ data }) => { if (data === "take over") void here.skipWaiting(); });

here.addEventListener("fetch", (event) => {
  const { request } = event;
  if (request.method !== "GET" || !request.url.startsWith(here.registration.scope)) return;
  event.respondWith(answerTo(request));
});

async function answerTo(request: Request): Promise<Response> {
  const store = await caches.open(STORE);
  const held = request.mode === "navigate" ? await store.match(address(PAGE)) : await store.match(request) ?? await caches.match(request);
  return held ?? fetch(request);
}
