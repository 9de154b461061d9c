// Keeps one whole edition of the handbook on the device, so that it works without a network.
//
// An edition is kept wholly or not at all, and each file is held to the sum that the build took of
// it. Until a reader takes the next edition, all tabs are answered from the one they were opened in;
// a tab that goes on in a former edition gets every file of that one, for as long as it is open.
// Workbox's modules stand above; the build writes the edition below.
const EDITION = "EDITION_OF_THIS_BUILD"; // {id, date, bytes, serving, files: [[address, sum, bytes], …]}

const { PrecacheController, PrecacheRoute } = workbox.precaching;
const { scope } = self.registration;
const CACHE = workbox.core.cacheNames.precache;
const NOTES = `benchrule-notes-${scope}`;
const STARTS = `benchrule-starts-${scope}`; // made on this device by pages, see kept_start.mjs
const LOCK = `benchrule-kept-${scope}`; // held while files come in, so that none is swept away
const STATE = new URL("state", scope).href;
const LIVE = "live"; // a tab that is answered by the server, not by an edition
const PROGRESS_MS = 250;
const HOLD_MS = 10_000; // a page that goes first says so again before this is over
const LOOK_MS = 100;

class Changed extends Error {
  name = "Changed"; // the server holds another file than the one of this edition
}
class Full extends Error {
  name = "Full";
}

/** One edition's files: where they are kept, and how a request finds its own. */
class Edition {
  #files = new Map(); // key in the cache → its address, sum and bytes
  #route;
  #done = 0;

  constructor({ id, files }) {
    this.id = id;
    this.controller = new PrecacheController({
      fallbackToNetwork: false,
      plugins: [{
        requestWillFetch: async ({ request, event }) => {
          if (event.type === "install") await untilLetGoOn();
          return asked(request.url);
        },
        fetchDidSucceed: ({ request, response }) => sound(response, request.url, this.#sumOf(request.url)),
        handlerDidComplete: async ({ event, error }) => {
          if (event.type === "install" && !error) await tellProgress(++this.#done);
        },
      }],
    });
    this.controller.strategy.matchOptions = { ignoreVary: true }; // a static file is one file
    this.controller.addToCacheList(files.map(([url, sum]) => ({ url, revision: sum })));
    for (const [url, sum, bytes] of files) {
      const address = new URL(url, scope).href;
      this.#files.set(this.controller.getCacheKeyForURL(address), { address, sum, bytes });
    }
    this.#route = new PrecacheRoute(this.controller, {
      ignoreURLParametersMatching: [/^/], // what a query says is for the page's scripts
      urlManipulation: ({ url }) => [new URL(url.pathname.replace(/\/index\.html$/, "/"), url)],
    });
  }

  get keys() {
    return [...this.#files.keys()];
  }

  #sumOf(address) {
    return this.#files.get(this.controller.getCacheKeyForURL(address))?.sum;
  }

  /** Where an address's file is kept, or nothing where the edition has no such file. */
  find(address) {
    return this.#route.match({ request: { url: address } });
  }

  /** What of the edition is not on the device. */
  async missing() {
    const held = new Set((await heldKeys()).map(({ url }) => url));
    return this.keys.filter((key) => !held.has(key));
  }

  bytesOf(keys) {
    return keys.reduce((sum, key) => sum + this.#files.get(key).bytes, 0);
  }

  async answer(event, found) {
    const { request } = event;
    try {
      return await this.controller.strategy.handle({ event, request, params: found });
    } catch {
      return this.fetchAgain(found.cacheKey); // the browser let go of it
    }
  }

  async fetchAgain(key) {
    const { address, sum } = this.#files.get(key);
    const response = await sound(await fetch(asked(address)), address, sum);
    // Where the reader let the copy go, nothing is kept on the quiet.
    if (await caches.has(CACHE)) await (await caches.open(CACHE)).put(key, response.clone());
    return response;
  }

  /** The handbook's own words for an address that it does not have. */
  async notThere() {
    const key = this.controller.getCacheKeyForURL(new URL("404.html", scope).href);
    const page = key && (await caches.match(key, { cacheName: CACHE, ignoreVary: true }));
    const words = page ? await page.text() : "This page is not in the handbook that is kept on this device.";
    const type = page?.headers.get("Content-Type") ?? "text/plain; charset=utf-8";
    return new Response(words, { status: 404, headers: { "Content-Type": type } });
  }
}

async function heldKeys() {
  return (await caches.has(CACHE)) ? (await caches.open(CACHE)).keys() : [];
}

const holding = new Map(); // the pages that go first, and until when

/** While a page starts its calculators, it goes first: until it says so, or says nothing any more. */
async function untilLetGoOn() {
  const isHeld = () => [...holding.values()].some((until) => performance.now() < until);
  while (isHeld()) await new Promise((resolve) => setTimeout(resolve, LOOK_MS));
}

/** A copy that the browser has will do: its sum is taken. Under `serve` files change all the time. */
function asked(address) {
  return new Request(address, { cache: EDITION.serving ? "no-cache" : "force-cache", credentials: "same-origin" });
}

/** The response, if it is the edition's file; else the server is asked once more, past all caches. */
async function sound(response, address, sum) {
  if (EDITION.serving && response.ok) return response; // the development server adds to its pages
  if (response.ok && (await sumOf(response)) === sum) return response;
  const fresh = await fetch(new Request(address, { cache: "reload", credentials: "same-origin" }));
  if (fresh.ok && (await sumOf(fresh)) === sum) return fresh;
  throw new Changed(`${address} is not of this edition`);
}

async function sumOf(response) {
  const sum = await crypto.subtle.digest("SHA-256", await response.clone().arrayBuffer());
  return btoa(String.fromCharCode(...new Uint8Array(sum)));
}

const own = new Edition(EDITION);

// What must outlast the worker: which edition is current, and which tabs are not of it.
const notes = {
  state: readState(),
  editions: new Map([[own.id, Promise.resolve(own)]]),
  async save() {
    await writeNote(STATE, await this.state);
  },
  /** An edition by its id; nothing where it is not kept any more. */
  edition(id) {
    if (!this.editions.has(id)) {
      this.editions.set(id, readNote(noteOf(id)).then((kept) => (kept ? new Edition(kept) : null)));
    }
    return this.editions.get(id);
  },
};

function readState() {
  return readNote(STATE).catch(() => null).then((state) => state ?? { current: null, clients: {} });
}

function noteOf(id) {
  return new URL(`edition-${id}`, scope).href;
}

async function readNote(address) {
  const found = await caches.match(address, { cacheName: NOTES });
  return found?.json();
}

async function writeNote(address, value) {
  await (await caches.open(NOTES)).put(address, new Response(JSON.stringify(value)));
}

// Install: fetch what is not here yet. It fails as a whole, and goes on where it stopped.

self.addEventListener("install", (event) => event.waitUntil(install(event)));

async function install(event) {
  try {
    await takeIn(event).catch(async (error) => {
      // What pages made here for a quicker start makes room: it can be made again. One by one, for the
      // room of a store that goes as a whole comes free only when no page has it open any more.
      if (reasonOf(error) !== "full" || !(await sweepStarts([]))) throw error;
      await takeIn(event);
    });
    await writeNote(noteOf(own.id), EDITION);
  } catch (error) {
    await tell({ stopped: reasonOf(error), short: await toFree().catch(() => 0) });
    throw error;
  }
  const { current } = await readState();
  // The same pages under another date need no leave of the reader's.
  if (current === own.id || EDITION.serving) await self.skipWaiting();
}

async function takeIn(event) {
  await checkRoom();
  await navigator.locks.request(LOCK, () => own.controller.install(event));
}

async function checkRoom() {
  if ((await shortBy()) > 0) throw new Full("the device is full");
}

/** How many bytes the device lacks for the rest of the edition. */
async function shortBy() {
  if (!navigator.storage?.estimate) return 0; // a browser that does not say: it will, when it is full
  const { quota, usage } = await navigator.storage.estimate();
  return own.bytesOf(await own.missing()) - (quota - usage);
}

/** How many bytes to free: browsers may report a quota of fancy, so at least what did not come in. */
async function toFree() {
  return Math.max(await shortBy(), own.bytesOf(await own.missing()));
}

function reasonOf(error) {
  if (error.name === "QuotaExceededError" || error.name === "Full") return "full";
  return error.name === "Changed" ? "changed" : "network";
}

async function tell(message) {
  for (const client of await self.clients.matchAll({ type: "window", includeUncontrolled: true })) {
    client.postMessage({ handbook: scope, ...message });
  }
}

let told = 0;

async function tellProgress(done) {
  if (performance.now() - told < PROGRESS_MS) return;
  told = performance.now();
  await tell({ saving: done, of: EDITION.files.length, edition: own.id });
}

// Activate: the tabs that are open go on in the edition they were opened in.

let former = null; // set in the run in which this edition took over
const ours = new Set(); // the tabs and workers that this edition opened in this run
const marked = new Set(); // those that another one answers, marked in this run

self.addEventListener("activate", (event) => event.waitUntil(activate()));

async function activate() {
  notes.state = readState(); // the former worker may have written since this one began
  const state = await notes.state;
  const led = new Set((await self.clients.matchAll({ type: "all" })).map(({ id }) => id));
  former = state.current ?? LIVE;
  for (const { id } of await everyClient()) state.clients[id] ??= led.has(id) ? former : LIVE;
  if (EDITION.serving) state.clients = {}; // an author wants what was last built, in every tab
  state.current = own.id;
  await tidy(state);
  // The first edition serves the page that brought it, if that is of the same edition (see "hello").
  if (former === LIVE) await self.clients.claim();
}

function everyClient() {
  return self.clients.matchAll({ type: "all", includeUncontrolled: true });
}

/** Lets go of the tabs that were closed, and of the editions that no tab is of any more. */
async function tidy(state) {
  const open = new Set((await everyClient()).map(({ id }) => id));
  for (const id of Object.keys(state.clients)) {
    if (!open.has(id) && !marked.has(id)) delete state.clients[id];
  }
  await notes.save();
  await navigator.locks.request(LOCK, { ifAvailable: true }, (free) => free && sweep(state));
}

async function sweep(state) {
  if (self.registration.installing || self.registration.waiting) return; // its files lie there too
  const keep = new Set([own.id, ...Object.values(state.clients)].filter((id) => id !== LIVE));
  const wanted = new Set([STATE, ...[...keep].map(noteOf)]);
  for (const id of keep) for (const key of (await notes.edition(id))?.keys ?? []) wanted.add(key);
  for (const name of [CACHE, NOTES]) {
    const cache = await caches.open(name);
    for (const { url } of await cache.keys()) if (!wanted.has(url)) await cache.delete(url);
  }
  await sweepStarts([...wanted]);
}

/** Lets go of the kept starts of runtimes that are not wanted any more; whether there were any. */
async function sweepStarts(wanted) {
  if (!(await caches.has(STARTS))) return false;
  const starts = await caches.open(STARTS);
  let dropped = false;
  for (const { url } of await starts.keys()) {
    const runtime = new URL("./", url).href;
    if (!wanted.some((key) => key.startsWith(runtime))) dropped = (await starts.delete(url)) || dropped;
  }
  return dropped;
}

// Fetch: from the edition of the tab that asks.

self.addEventListener("fetch", (event) => {
  const { method, url } = event.request;
  if (method !== "GET" || !url.startsWith(scope)) return;
  if (EDITION.serving && event.request.mode !== "navigate" && !own.find(url)) return; // the server's own
  event.respondWith(answer(event));
});

async function answer(event) {
  const { request } = event;
  const opens = request.mode === "navigate";
  const id = opens ? own.id : await editionOf(event);
  if (id === LIVE) return fetch(request);
  if (EDITION.serving) {
    try {
      return await fetch(request);
    } catch {
      // The server was ended: what it last built is here.
    }
  }
  const edition = (await notes.edition(id)) ?? own;
  const found = edition.find(request.url);
  if (!opens) return found ? edition.answer(event, found) : fetch(request);
  try {
    if (found) {
      await opened(event.resultingClientId, own.id);
      return await edition.answer(event, found);
    }
  } catch {
    // The browser let go of this page, and the server has another in its place, or is not there.
  }
  return answerUnknown(event, edition);
}

/** The edition of the tab, or of the worker, that asks. */
async function editionOf({ clientId, resultingClientId }) {
  const state = await notes.state;
  let id = state.clients[clientId];
  if (!id && former && !EDITION.serving && clientId && !ours.has(clientId) && (await isTab(clientId))) {
    id = former; // it was being opened while the former edition ended
    await opened(clientId, id);
  }
  id ??= own.id;
  if (resultingClientId) await opened(resultingClientId, id); // a worker goes by the tab that starts it
  return id;
}

async function isTab(id) {
  return (await self.clients.get(id))?.type === "window";
}

async function opened(clientId, edition) {
  if (!clientId) return;
  const state = await notes.state;
  if (edition === own.id) {
    ours.add(clientId);
    delete state.clients[clientId];
    if (Object.keys(state.clients).length) tidy(state).catch(() => {});
  } else {
    marked.add(clientId);
    state.clients[clientId] = edition;
    await notes.save();
  }
}

/** An address that the edition does not have: a folder without its slash, something beside the
 *  handbook, a page of a newer edition, or nothing at all. */
async function answerUnknown(event, edition) {
  const folder = new URL(event.request.url);
  folder.pathname += "/";
  if (edition.find(folder.href)) return Response.redirect(folder.href);
  try {
    const response = await fetch(event.request);
    await opened(event.resultingClientId, LIVE); // all of that page is the server's
    return response;
  } catch {
    return edition.notThere();
  }
}

// Messages from the pages.

self.addEventListener("message", (event) => {
  const { ask, is } = event.data ?? {};
  if (ask === "edition") event.waitUntil(describe().then((said) => event.ports[0]?.postMessage(said)));
  else if (ask === "hold") holding.set(event.source.id, performance.now() + HOLD_MS);
  else if (ask === "go on") holding.delete(event.source.id);
  else if (ask === "take over") event.waitUntil(self.skipWaiting());
  else if (ask === "mend") event.waitUntil(mend());
  else if (is && event.source) event.waitUntil(hello(event.source.id, is));
});

async function describe() {
  const { id, date, bytes, serving, files } = EDITION;
  const missing = await own.missing();
  return { edition: id, date, bytes, serving, files: files.length, missing: missing.length };
}

/** Fetches what the browser let go of. */
async function mend() {
  try {
    await caches.open(CACHE); // the browser may have cleared all of it
    for (const key of await own.missing()) await own.fetchAgain(key);
    await tell({ mended: true });
  } catch (error) {
    await tell({ stopped: reasonOf(error), short: await toFree().catch(() => 0) });
  }
}

/** A page that came from the server before this worker did, and is of the very same edition. */
async function hello(clientId, edition) {
  const state = await notes.state;
  if (edition !== own.id || state.clients[clientId] !== LIVE) return;
  const here = (await everyClient()).filter(({ id, url }) => state.clients[id] === LIVE && url.startsWith(scope));
  const others = here.some(({ id, type }) => type === "window" && id !== clientId);
  // A page's workers go with it; whose they are is known only where it is alone.
  for (const { id, type } of here) {
    if (id !== clientId && (others || type === "window")) continue;
    delete state.clients[id];
    ours.add(id);
  }
  await notes.save();
}
