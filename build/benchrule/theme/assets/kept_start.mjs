// The start of the calculators, kept on this device: the interpreter's memory as it stands when it can
// answer. The workers of later pages go on from there, in half the time. A worker beside the page's own
// makes it, from no more than the runtime's files, while the reader does not calculate.
import { remember, remembered } from "./store.mjs";

const ROOT = new URL("../../", import.meta.url);
const STARTS = `benchrule-starts-${ROOT}`; // as in worker.mjs and in the service worker
const LEAST_MEMORY_GB = 2; // where a device says how much it has
const LEAST_ROOM_BYTES = 100e6; // of what the browser grants; saving a newer edition comes first
const LONGEST_MS = 60_000;

const STOPPED = "stopped"; // the reader goes first
const NOT_ON = "no-start"; // a day on which none is kept

let stop = null;

/** Keeps a start of ``runtime`` (its folder), if none is kept. Whether to try again on this visit. */
export async function keepStart(runtime) {
  if (navigator.deviceMemory < LEAST_MEMORY_GB || remembered(NOT_ON) === today()) return false;
  return navigator.locks.request(STARTS, { ifAvailable: true }, async (free) => {
    if (!free || (await caches.match(new URL("started", runtime), { cacheName: STARTS }))) return false;
    const { quota, usage } = await navigator.storage.estimate();
    if (quota - usage < LEAST_ROOM_BYTES) return false;
    return (await make(runtime)) === STOPPED;
  });
}

/** Ends the worker that is at it: the reader calculates. */
export function stopKeeping() {
  stop?.();
}

function make(runtime) {
  const worker = new Worker(new URL("worker.mjs", runtime), { type: "module", name: "keeper" });
  return new Promise((resolve) => {
    const end = (how) => {
      clearTimeout(limit);
      stop = null;
      worker.terminate();
      resolve(how);
    };
    const limit = setTimeout(end, LONGEST_MS);
    stop = () => end(STOPPED);
    worker.onmessage = ({ data }) => {
      if (data.amiss) keepNoneToday();
      end();
    };
    worker.onerror = (event) => {
      event.preventDefault();
      end();
    };
  });
}

/** Lets it be for today: the browser refused, or a worker broke that may have gone on from one. */
export function keepNoneToday() {
  if (remembered(NOT_ON) !== today()) remember(NOT_ON, today());
}

function today() {
  return new Date().toISOString().slice(0, 10);
}

/** How many bytes are kept so. */
export async function keptStartBytes() {
  if (!(await caches.has(STARTS))) return 0;
  const store = await caches.open(STARTS);
  let bytes = 0;
  for (const request of await store.keys()) bytes += Number((await store.match(request))?.headers.get("Content-Length"));
  return bytes;
}

/** Does something while none is made, in this tab or another. */
export function whileNoneIsMade(act) {
  stopKeeping();
  return navigator.locks.request(STARTS, act);
}
