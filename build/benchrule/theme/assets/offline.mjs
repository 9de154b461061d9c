// Use without a network: has the handbook saved on this device, says in the foot of every page what
// is saved, and offers a newer edition when one waits. A reader decides when to take it.
import { reloadWithEntries, underWay, watchEntries, wouldBeLost } from "./carry_over.mjs";
import { edition } from "./edition.mjs";
import { make } from "./elements.mjs";
import { keepNoneToday, keepStart, keptStartBytes, stopKeeping, whileNoneIsMade } from "./kept_start.mjs";
import { remember, remembered } from "./store.mjs";

const ROOT = new URL("../../", import.meta.url);
const CHOICE = "offline"; // "no": the reader let the copy go; "yes": wants it though traffic is saved
const ANSWER_MS = 5_000;
const LONGEST_MS = 300_000; // that saving waits for a calculator; the engine gives a start up by then
const READ_MS = 2_000; // after the page is there, for a reader who came to calculate
const HOLD_AGAIN_MS = 2_000; // the worker forgets a page that does not say again that it goes first
const AGAIN_MS = 60_000; // the first wait before another try; each next one is twice as long
const LOOK_MS = 30 * 60_000; // how often an open page asks for a newer edition
const REST_MS = 4_000; // without a calculation, before a start is kept for the next page

const WHY_NOT = {
  insecure: "Not saved: the address is not https",
  refused: "Not saved: this browser keeps nothing here (private window, or its settings)",
  declined: "Not saved: you let the saved copy go",
  frugal: "Not saved: this device asks to save traffic",
  network: "Saving stopped: no network; it goes on at the next visit",
  changed: "Saving stopped: the handbook is being changed on its server; it goes on at the next visit",
};
const MORE = {
  insecure: "Browsers keep pages only from an https address. Whoever runs the handbook can give it one; until then it needs the network.",
  refused: "The handbook works as long as there is a network.",
  declined: "Your answers, measurements and choices are still here; they are kept apart from it.",
  frugal: "Saving fetches the whole handbook once. It was put off because this device or its network is set to save traffic.",
  full: "The handbook goes on from the network. With more room on the device it can be saved.",
  network: "What has come so far is kept; the rest follows.",
  changed: "Nothing of two editions is ever mixed, so saving waits until the server has the whole of one.",
  saving: "You can read on meanwhile.",
  saved: "Every page, table, calculator and exercise works here without a network. Your answers and measurements are kept apart from it.",
  serving: "This is the author's own server: pages come from it while it runs, and from what it last built when it is ended.",
  none: "The whole handbook is saved on this device shortly after the first page is there.",
};

const now = { state: "none", saving: null, saved: null, newer: null, short: 0, persisted: true, startBytes: 0, startDone: false };
let registration = null;
let engine = null;
const ready = []; // what waits for the engine to have no more to do
let resting = 0; // the timer of the rest
let held = 0; // since when the worker is held back, by the page's clock
let holding = 0;
let begun = false;
let taking = false; // this tab asked for the newer edition
let reloading = false;
let wait = AGAIN_MS;

/** Shows the words on the page at hand; the first time, has the handbook saved as well. */
export function attachOffline(calculating) {
  show();
  if (begun) return;
  begun = true;
  engine = calculating;
  engine.heed(() => {
    goFirst();
    keepWhenAtRest();
    if (!engine.isBusy) for (const go of ready.splice(0)) go();
  });
  watchEntries();
  begin().catch(() => set("refused"));
}

async function begin() {
  if (!window.isSecureContext) return set("insecure");
  if (!navigator.serviceWorker || !window.caches) return set("refused");
  navigator.serviceWorker.addEventListener("message", ({ data }) => hear(data));
  navigator.serviceWorker.addEventListener("controllerchange", () => changed());
  navigator.serviceWorker.startMessages();
  await pageIsQuiet();
  await caches.has("benchrule"); // throws where storage is refused
  const here = await navigator.serviceWorker.getRegistration(ROOT);
  const known = here?.scope === ROOT.href && here.active;
  if (remembered(CHOICE) === "no") return set("declined");
  if (!known && navigator.connection?.saveData && remembered(CHOICE) !== "yes") return set("frugal");
  await register();
  window.addEventListener("online", () => again());
  document.addEventListener("visibilitychange", () => document.hidden || lookForNewer());
  setInterval(lookForNewer, LOOK_MS);
  return undefined;
}

/** The page goes first, and so does a calculator that is starting on it, until it has answered. */
async function pageIsQuiet() {
  if (document.readyState !== "complete") {
    await new Promise((resolve) => window.addEventListener("load", resolve, { once: true }));
  }
  await new Promise((resolve) => setTimeout(resolve, READ_MS));
  let waited = false;
  const limit = setTimeout(() => (waited = true), LONGEST_MS);
  do {
    while (engine.isBusy && !waited) await settled();
    await new Promise((resolve) => (window.requestIdleCallback ?? setTimeout)(resolve));
  } while (engine.isBusy && !waited);
  clearTimeout(limit);
}

/** Resolves when the engine has no more to do, or after the longest wait. */
function settled() {
  return new Promise((resolve) => {
    ready.push(resolve);
    setTimeout(resolve, LONGEST_MS);
  });
}

/** Has the worker that is fetching an edition wait while a calculator starts or answers on this page. */
function goFirst() {
  clearTimeout(holding);
  const worker = registration?.installing;
  if (!engine.isBusy || !worker) {
    if (held) worker?.postMessage({ ask: "go on" });
    held = 0;
    return;
  }
  held ||= performance.now();
  if (performance.now() - held > LONGEST_MS) return;
  worker.postMessage({ ask: "hold" });
  holding = setTimeout(goFirst, HOLD_AGAIN_MS);
}

/** Where the copy is saved and calculators are used, the next page's start is kept as well. */
function keepWhenAtRest() {
  clearTimeout(resting);
  if (engine.hasBroken) keepNoneToday();
  if (engine.isBusy) stopKeeping();
  else if (now.state === "saved" && !now.startDone && remembered("runtime") === engine.runtime.href) resting = setTimeout(keepOne, REST_MS);
}

async function keepOne() {
  now.startDone = true;
  now.startDone = !(await keepStart(engine.runtime).catch(() => false));
  await countStart();
  show();
}

async function countStart() {
  now.startBytes = await keptStartBytes().catch(() => 0);
}

async function register() {
  try {
    registration = await navigator.serviceWorker.register(new URL("service-worker.js", ROOT), { updateViaCache: "none" });
  } catch (error) {
    return set(error.name === "TypeError" ? "network" : "refused"); // a worker's file that did not come
  }
  registration.addEventListener("updatefound", () => follow(registration.installing));
  for (const worker of [registration.installing, registration.waiting]) if (worker) follow(worker);
  await look();
  return undefined;
}

function follow(worker) {
  if (!worker) return;
  goFirst();
  worker.addEventListener("statechange", () => {
    if (worker.state === "redundant" && !registration.active && !(now.state in WHY_NOT) && now.state !== "full") set("network");
    else look();
  });
  look();
}

/** What the workers say of themselves, as words. */
async function look() {
  const { active, waiting, installing } = registration ?? {};
  now.saved = active ? await ask(active) : null;
  const next = waiting && now.saved && !now.saved.serving ? await ask(waiting) : null;
  now.newer = next && next.edition !== now.saved.edition ? next : null;
  if (now.saved?.missing) active.postMessage({ ask: "mend" });
  if (now.saved) {
    now.persisted = await navigator.storage?.persisted?.().catch(() => true) ?? true;
    await countStart();
    set("saved");
    keepWhenAtRest();
  } else if (installing || waiting) set("saving");
  if (now.newer) offer(now.newer);
}

function ask(worker) {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    const limit = setTimeout(resolve, ANSWER_MS, null);
    port1.onmessage = ({ data }) => {
      clearTimeout(limit);
      resolve(data);
    };
    worker.postMessage({ ask: "edition" }, [port2]);
  });
}

function hear(message) {
  if (message?.handbook !== ROOT.href) return;
  if (message.saving) {
    now.saving = message;
    if (!now.saved) set("saving");
  } else if (message.mended) look();
  else if (message.stopped && !now.saved) {
    now.short = message.short;
    set(message.stopped);
    if (message.stopped !== "full") setTimeout(again, wait);
    wait = Math.min(2 * wait, LOOK_MS);
  }
}

/** Another try, where saving stopped for want of a network or of a whole edition. */
function again() {
  if (now.state === "network" || now.state === "changed") register();
}

function lookForNewer() {
  again();
  if (registration?.active) registration.update().then(look, () => {}); // without a network: later
}

/** Another worker answers this tab now: the first one, or a newer edition that some tab asked for. */
async function changed() {
  const said = await ask(navigator.serviceWorker.controller);
  if (!said || reloading) return;
  if (said.edition === edition || said.serving) navigator.serviceWorker.controller.postMessage({ is: edition });
  else if (taking || (document.hidden && !underWay())) return reload();
  else if (now.saved) offer(said, true); // this tab goes on in its own edition until it is loaded anew
  await look();
}

function reload() {
  if (reloading) return;
  reloading = true;
  reloadWithEntries();
}

// The words in the foot of the page.

function set(state) {
  now.state = state;
  show();
}

function show() {
  const foot = document.querySelector(".md-footer-meta__inner");
  if (!foot) return;
  let place = foot.querySelector(".br-offline");
  if (!place) {
    place = make("details", { className: "br-offline" }, make("summary"), make("div", { className: "br-offline-more" }));
    foot.append(place);
  }
  const [summary, more] = place.children;
  const said = words();
  const line = moreWords();
  if (summary.textContent === said && place.dataset.state === now.state && more.firstChild?.textContent === line) return;
  place.dataset.state = now.state;
  summary.textContent = said;
  more.replaceChildren(make("p", {}, line), make("p", { className: "br-offline-do" }, ...buttons()));
}

function words() {
  const { state, saved, saving, newer, short } = now;
  if (state === "saved") {
    if (saved.missing) return `Not wholly saved: ${saved.missing} of ${saved.files} files are missing`;
    const kept = `Saved for offline use: ${megabytes(saved.bytes)}, edition of ${day(saved.date)}`;
    return newer ? `${kept}; a newer edition waits` : kept;
  }
  if (state === "saving") return `Being saved for offline use …${saving ? ` ${saving.saving} of ${saving.of} files` : ""}`;
  if (state === "full") return `Not saved: the device is full; free ${Math.max(1, Math.ceil(short / 1e6))} MB`;
  return WHY_NOT[state] ?? "Not saved on this device yet";
}

function moreWords() {
  const line = now.saved?.serving ? MORE.serving : MORE[now.state];
  if (now.state !== "saved" || !now.startBytes) return line;
  return `${line} Another ${megabytes(now.startBytes)}, made on this device, let the calculators start sooner.`;
}

function buttons() {
  const { state, newer } = now;
  const button = (said, onclick) => make("button", { type: "button", className: "br-button", onclick }, said);
  const found = [];
  if (newer) found.push(button("Read the newer edition", take));
  if (["full", "network", "changed", "declined", "frugal"].includes(state)) found.push(button("Save it now", () => saveNow()));
  if (state === "saved" && !now.persisted) found.push(button("Ask the browser not to clear it", () => persist()));
  if (state === "saved") found.push(button("Forget the saved copy", () => forget()));
  return found;
}

function megabytes(bytes) {
  return `${(bytes / 1e6).toFixed(1)} MB`;
}

function day(date) {
  return new Date(`${date}T00:00:00Z`).toLocaleDateString("en-GB", { day: "numeric", month: "long", year: "numeric", timeZone: "UTC" });
}

function saveNow() {
  remember(CHOICE, "yes");
  now.saving = null;
  set("saving");
  register();
}

async function persist() {
  now.persisted = await navigator.storage.persist().catch(() => false);
  document.querySelector(".br-offline")?.removeAttribute("data-state"); // its buttons change
  show();
  if (!now.persisted) document.querySelector(".br-offline-more p").textContent = "The browser did not agree. It clears saved pages only when the device is nearly full, those read least first.";
}

async function forget() {
  if (!confirm("Forget the saved copy? Without a network the handbook is then not here. Your answers and measurements stay.")) return;
  remember(CHOICE, "no");
  await registration.unregister();
  await whileNoneIsMade(async () => {
    for (const name of await caches.keys()) if (name.endsWith(ROOT.href)) await caches.delete(name);
  });
  registration = now.saved = now.newer = null;
  now.startBytes = 0;
  document.querySelector(".br-newer")?.remove();
  set("declined");
}

// The offer of a newer edition.

const LATER = "benchrule.later";

/** Says that a newer edition waits; ``taken`` where another tab has taken it already. */
function offer(newer, taken = false) {
  if (putOff() === newer.edition && !taken) return;
  if (document.querySelector(".br-newer")?.dataset.edition === newer.edition && !taken) return;
  document.querySelector(".br-newer")?.remove();
  const said = make("p", { role: "status" });
  const bar = make("section", { className: "br-newer", "aria-label": "Newer edition", "data-edition": newer.edition }, said,
    make("p", { className: "br-offline-do" },
      make("button", { type: "button", className: "br-button br-main", onclick: take }, "Read it now"),
      make("button", { type: "button", className: "br-button", onclick: () => {
        putOff(newer.edition);
        bar.remove();
      } }, "Later")));
  document.body.append(bar);
  const line = taken
    ? `The newer edition of this handbook (${day(newer.date)}) was opened in another tab. This page is still of the one before.`
    : `A newer edition of this handbook waits (${day(newer.date)}).`;
  requestAnimationFrame(() => (said.textContent = line)); // a status is read out when it changes
}

function putOff(id) {
  try {
    if (id) sessionStorage.setItem(LATER, id);
    return sessionStorage.getItem(LATER);
  } catch {
    return id ?? null;
  }
}

/** Whether what is done on this page does not outlast it. Only pages that keep something ask the store. */
async function isNotKept() {
  try {
    const { whyNotKept } = await import("./device.mjs");
    return Boolean(await whyNotKept());
  } catch {
    return true; // what keeps it did not come
  }
}

/** Takes the newer edition: on a word more where something filled in would be lost. */
async function take() {
  const lost = wouldBeLost() || (underWay() && (await isNotKept()));
  if (lost && !confirm("What is filled in on this page is not kept and would be lost. Read the newer edition all the same?")) return;
  taking = true;
  if (registration.waiting) registration.waiting.postMessage({ ask: "take over" });
  else reload(); // another tab has asked for it already
}
