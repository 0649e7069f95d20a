// The service worker: it takes in every file of its build, and afterwards answers from what it took in. On the first visit
// what only makes files comes after the rest, when the page has nothing else to do. A newer build takes all in before it
// waits until no tab is open or the maker asks for it. The files of the build before stay, for tabs that still show it.

/** Put in when it is built: the files of the build, those that may come later, and a mark that is another where any of them is. */
declare const FIRST: readonly string[];
declare const LATER: readonly string[];
declare const MARK: string;

/** What this file uses of a service worker's surroundings. */
interface Surroundings {
  addEventListener(type: "install" | "activate", hear: (event: { waitUntil(done: Promise<unknown>): void }) => void): void;
  addEventListener(type: "fetch", hear: (event: { readonly request: Request; respondWith(answer: Promise<Response>): void }) => void): void;
  addEventListener(type: "message", hear: (event: { readonly data: unknown; waitUntil(done: Promise<unknown>): void }) => void): void;
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
  event.waitUntil(caches.keys().then((names) => takeIn(names.some((name) => name.startsWith(PREFIX) && name !== STORE) ? [...FIRST, ...LATER] : FIRST)));
});

const takeIn = (files: readonly string[]) => caches.open(STORE).then((store) => store.addAll(files.map(request)));

/** What is named by its contents is as good from the browser's own store; the others are asked for anew. */
const request = (file: string): Request => new Request(address(file), { cache: file.startsWith("assets/") ? "default" : "reload" });

/** One after another, each kept as it comes; where the network goes away, the next visit asks again. */
async function takeInRest(): Promise<void> {
  const store = await caches.open(STORE);
  for (const file of LATER) if (!await store.match(address(file))) await store.add(request(file));
}

here.addEventListener("activate", (event) => {
  event.waitUntil(caches.keys().then(async (names) => {
    const before = names.filter((name) => name.startsWith(PREFIX) && name !== STORE);
    await Promise.all(before.slice(0, -1).map((name) => caches.delete(name)));
    await here.clients.claim();
  }));
});

here.addEventListener("message", (event) => {
  if (event.data === "take over") void here.skipWaiting();
  if (event.data === "take in the rest") event.waitUntil(takeInRest().catch(() => {}));
});

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
