// What a reader did, kept on this device alone: answers to exercises, and work under way.
//
// Every answer is written before it is shown as marked, and asked to be on the disk and not only on
// its way there: losing power in the middle loses nothing. What the browser refuses to keep stays in
// memory, goes into every export, and is written as soon as the browser lets it.
import { openDB } from "./idb.mjs";

const DISK = { durability: "strict" };
const OPEN_LIMIT_MS = 5_000;
const SETTLES_MS = 500;
const LARGEST_IMPORT = 20_000_000;
const ANSWER = { id: "string", exercise: "string", verdict: "string", right: "boolean", at: "number" };
const WHY = {
  refused: "This browser keeps nothing for this handbook (a private window, or its settings).",
  newer: "A newer edition of the handbook changed what is kept here; load the page again.",
  full: "This device’s store is full; make room, or wipe what is not needed.",
};
const TILL_LEFT = "What you do now lasts until the page is left or loaded again: save it to a file first.";

let opened = null;
let settled = null; // a store that is being deleted refuses to be opened until it is gone
let refused = "";
let failed = ""; // of the latest write
const memory = { answers: new Map(), kept: new Map() };
const heeding = new Map();
const tabs = "BroadcastChannel" in window ? new BroadcastChannel("benchrule.device") : null;
if (tabs) tabs.onmessage = ({ data }) => notify(data);

async function database() {
  if (refused) return null;
  await settled;
  try {
    opened ??= Promise.race([openDB("benchrule", 1, { upgrade, blocking, terminated }), never(OPEN_LIMIT_MS)]);
    return await opened;
  } catch (error) {
    // The visit goes on in memory.
    refused = { VersionError: "newer", QuotaExceededError: "full" }[error?.name] ?? "refused";
    return null;
  }
}

function never(limitMs) {
  return new Promise((_, reject) => setTimeout(() => reject(new Error("the store does not open")), limitMs));
}

function upgrade(db) {
  db.createObjectStore("answers", { keyPath: "id" }).createIndex("at", "at");
  db.createObjectStore("kept");
}

/** A newer edition in another tab wants to change the store, or another tab deletes it. */
function blocking(_, newer, event) {
  event.target.close();
  if (newer === null) terminated();
  else opened = null;
}

/** The browser, or its owner, deleted what was kept. */
function terminated() {
  opened = null;
  settled = new Promise((done) => setTimeout(done, SETTLES_MS));
  notify({ gone: true });
}

/** Reads; a store that was cleared or closed under us is opened once more. */
async function read(ask, otherwise) {
  for (let turn = 1; turn <= 2; turn++) {
    const db = await database();
    if (!db) break;
    try {
      return await ask(db);
    } catch {
      opened = null;
    }
  }
  return otherwise;
}

/** Writes in one step that other tabs cannot come between. False where nothing could be written. */
async function write(stores, act) {
  for (let turn = 1; turn <= 2; turn++) {
    const db = await database();
    if (!db) return false;
    try {
      const step = db.transaction(stores, "readwrite", DISK);
      const acted = Promise.resolve(act(step));
      acted.catch(() => {}); // the step's own end says why
      await step.done;
      await acted;
      failed = "";
      return true;
    } catch (error) {
      failed = error?.name === "QuotaExceededError" ? "full" : "refused";
      if (failed === "full") return false;
      opened = null;
    }
  }
  return false;
}

/** Why what is done now does not outlast the page, and what to do; nothing where it is kept. */
export async function whyNotKept() {
  await database();
  const why = WHY[refused || failed] ?? (memory.answers.size || memory.kept.size ? WHY.full : "");
  return why && `${why} ${TILL_LEFT}`;
}

/** Adds an answer. */
export async function addAnswer(answer) {
  const whole = { id: newId(), ...answer };
  memory.answers.set(whole.id, whole);
  await writeAnswers();
  return whole;
}

/** Writes the answers that stand in memory, now and whenever there is a new one. */
async function writeAnswers() {
  const fresh = [...memory.answers.values()];
  const written = await write("answers", (step) => Promise.all(fresh.map((one) => step.store.put(one))));
  if (!written) return;
  for (const { id } of fresh) memory.answers.delete(id);
  tell({ answers: fresh.map(({ exercise, seed }) => ({ exercise, seed })) });
}

/** Every answer, the oldest first, and how many entries of the store are none. */
async function stored() {
  const found = await read((db) => db.getAll("answers"), []);
  const sound = found.filter(isAnswer);
  const all = new Map([...sound.map((one) => [one.id, one]), ...memory.answers]);
  return { answers: [...all.values()].sort((one, other) => one.at - other.at), damaged: found.length - sound.length };
}

/** Every answer, the oldest first. */
export async function allAnswers() {
  return (await stored()).answers;
}

/** How many entries of the store cannot be read; they stay there, and are left out. */
export async function damagedAnswers() {
  return (await stored()).damaged;
}

/** The answers as the exercises' door takes them. */
export async function history() {
  return (await allAnswers()).map(({ exercise, right, at }) => [exercise, right, at]);
}

/**
 * Changes what is under way under a key, in one step: ``update`` makes the new value of the one that
 * another tab may just have written; ``undefined`` lets go of it. ``part`` tells other tabs what of it
 * changed. Says whether it is on the disk.
 */
export async function change(key, update, part = null) {
  let value;
  const written = await write("kept", async (step) => {
    value = update(memory.kept.get(key) ?? (await step.store.get(key)));
    await (value === undefined ? step.store.delete(key) : step.store.put(value, key));
  });
  if (written) {
    memory.kept.delete(key);
    if (memory.answers.size) await writeAnswers(); // there is room again
    tell({ key, part });
    return true;
  }
  value = update(memory.kept.get(key) ?? (await read((db) => db.get("kept", key))));
  if (value === undefined) memory.kept.delete(key);
  else memory.kept.set(key, structuredClone(value));
  return false;
}

/** What is kept under a key, or undefined. */
export async function kept(key) {
  return memory.kept.get(key) ?? read((db) => db.get("kept", key));
}

/** Every key that begins with a text. */
export async function keptKeys(start) {
  const keys = await read((db) => db.getAllKeys("kept"), []);
  return [...new Set([...keys, ...memory.kept.keys()])].filter((key) => String(key).startsWith(start));
}

/** Lets go of what is kept under a key. */
export function letGo(key) {
  return change(key, () => undefined);
}

/**
 * Calls back, as long as ``place`` is on the page, when what is kept changed from elsewhere: another
 * tab wrote ``answers`` or a ``part`` of a ``key``, all was ``wiped`` there, or is ``gone``.
 */
export function heedStore(place, act) {
  heeding.set(place, act);
}

function notify(what) {
  for (const [place, act] of heeding) {
    if (document.contains(place)) act(what);
    else heeding.delete(place);
  }
}

function tell(what) {
  tabs?.postMessage(what);
}

/** Everything as one object for a file. */
export async function exportAll() {
  return { benchrule: "progress", version: 1, saved: new Date().toISOString(), answers: await allAnswers() };
}

/** Takes a file's answers in beside those that are here; each is kept once. Says how many are new. */
export async function importAll(text) {
  if (text.length > LARGEST_IMPORT) throw new Error("The file is too large to be a progress file.");
  let data;
  try {
    data = JSON.parse(text);
  } catch {
    throw new Error("The file is not a progress file, or it was cut off.");
  }
  if (data?.benchrule !== "progress" || data.version !== 1 || !Array.isArray(data.answers)) {
    throw new Error("The file is not a progress file of this handbook.");
  }
  const fit = data.answers.filter(isAnswer);
  if (fit.length < data.answers.length) {
    throw new Error(`${data.answers.length - fit.length} of its ${data.answers.length} entries are damaged; nothing was taken in.`);
  }
  const here = new Set((await allAnswers()).map(({ id }) => id));
  const fresh = fit.filter(({ id }) => !here.has(id));
  for (const answer of fresh) memory.answers.set(answer.id, answer);
  await writeAnswers();
  return fresh.length;
}

function isAnswer(entry) {
  return entry !== null && typeof entry === "object"
    && Object.entries(ANSWER).every(([name, type]) => typeof entry[name] === type)
    && entry.id.length <= 40 && entry.exercise.length <= 120 && Number.isFinite(entry.at);
}

/** Wipes the answers and all that is under way. Says whether the store let it. */
export async function wipe() {
  memory.answers.clear();
  memory.kept.clear();
  const wiped = await write(["answers", "kept"], (step) =>
    Promise.all([step.objectStore("answers").clear(), step.objectStore("kept").clear()]));
  if (wiped) tell({ wiped: true });
  return wiped || refused !== "";
}

/** A name of chance; crypto.randomUUID is missing where a page came by plain http. */
export function newId(length = 16) {
  const letters = "23456789ABCDEFGHJKLMNPQRSTUVWXYZ";
  return [...crypto.getRandomValues(new Uint8Array(length))].map((byte) => letters[byte % 32]).join("");
}
