// What a reader did, kept on this device alone: answers to exercises, and work under way.
//
// Every answer is written before it is shown as marked, and asked to be on the disk and not only on
// its way there: losing power in the middle loses nothing.
import { openDB } from "./idb.mjs";

const DISK = { durability: "strict" };
const LARGEST_IMPORT = 20_000_000;
const ANSWER = { id: "string", exercise: "string", verdict: "string", right: "boolean", at: "number" };

let opened = null;
const memory = { answers: new Map(), kept: new Map() }; // where the browser refuses to keep anything
let refused = false;

async function database() {
  if (refused) return null;
  try {
    opened ??= openDB("benchrule", 1, { upgrade, blocking, terminated });
    return await opened;
  } catch {
    refused = true; // a private window, a full disk, a policy: the visit goes on in memory
    return null;
  }
}

function upgrade(db) {
  db.createObjectStore("answers", { keyPath: "id" }).createIndex("at", "at");
  db.createObjectStore("kept");
}

function blocking(_, __, event) {
  event.target.close(); // a newer edition in another tab wants to change the store
  opened = null;
}

function terminated() {
  opened = null;
}

/** Whether answers outlast this visit. */
export async function keeps() {
  return (await database()) !== null;
}

/** Adds an answer. Rejects where the store is full: the caller says so, nothing is overwritten. */
export async function addAnswer(answer) {
  const whole = { id: newId(), ...answer };
  const db = await database();
  if (!db) memory.answers.set(whole.id, whole);
  else {
    const change = db.transaction("answers", "readwrite", DISK);
    await Promise.all([change.store.put(whole), change.done]);
  }
  return whole;
}

/** Every answer, the oldest first. */
export async function allAnswers() {
  const db = await database();
  if (!db) return [...memory.answers.values()];
  return db.getAllFromIndex("answers", "at");
}

/** The answers as the exercises' door takes them. */
export async function history() {
  return (await allAnswers()).map(({ exercise, right, at }) => [exercise, right, at]);
}

/** Keeps something under way under a key. */
export async function keep(key, value) {
  const db = await database();
  if (!db) {
    memory.kept.set(key, structuredClone(value));
    return;
  }
  const change = db.transaction("kept", "readwrite", DISK);
  await Promise.all([change.store.put(value, key), change.done]);
}

/** What is kept under a key, or undefined. */
export async function kept(key) {
  const db = await database();
  return db ? db.get("kept", key) : memory.kept.get(key);
}

/** Every key that begins with a text. */
export async function keptKeys(start) {
  const db = await database();
  const keys = db ? await db.getAllKeys("kept") : [...memory.kept.keys()];
  return keys.filter((key) => String(key).startsWith(start));
}

/** Lets go of what is kept under a key. */
export async function letGo(key) {
  const db = await database();
  if (!db) memory.kept.delete(key);
  else await db.delete("kept", key);
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
  const db = await database();
  if (!db) for (const answer of fresh) memory.answers.set(answer.id, answer);
  else {
    const change = db.transaction("answers", "readwrite", DISK);
    await Promise.all([...fresh.map((answer) => change.store.put(answer)), change.done]);
  }
  return fresh.length;
}

function isAnswer(entry) {
  return entry !== null && typeof entry === "object"
    && Object.entries(ANSWER).every(([name, type]) => typeof entry[name] === type)
    && entry.id.length <= 40 && entry.exercise.length <= 120 && Number.isFinite(entry.at);
}

/** Wipes the answers and all that is under way. */
export async function wipe() {
  memory.answers.clear();
  memory.kept.clear();
  const db = await database();
  if (!db) return;
  const change = db.transaction(["answers", "kept"], "readwrite", DISK);
  await Promise.all([change.objectStore("answers").clear(), change.objectStore("kept").clear(), change.done]);
}

/** A name of chance; crypto.randomUUID is missing where a page came by plain http. */
export function newId(length = 16) {
  const letters = "23456789ABCDEFGHJKLMNPQRSTUVWXYZ";
  return [...crypto.getRandomValues(new Uint8Array(length))].map((byte) => letters[byte % 32]).join("");
}
