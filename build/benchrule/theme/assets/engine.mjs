// The engine: one Python worker for the whole visit, watched. It is started when a reader is about
// to use it, stopped when a calculation hangs, and replaced by a fresh one.

const START_LIMIT_MS = 30_000;
const ANSWER_LIMIT_MS = 5_000;
const HEAP_LIMIT_BYTES = 256 * 1024 * 1024; // a wasm heap never shrinks: past this, start afresh

export class TookTooLong extends Error {}
export class CannotStart extends Error {}

export class Engine {
  #runtime;
  #worker = null;
  #ready = null;
  #waiting = new Map();
  #prepared = new Map();
  #count = 0;

  constructor(runtime) {
    this.#runtime = runtime;
  }

  /** Starts the worker if it is not there. Resolves when it can answer. */
  start() {
    this.#ready ??= new Promise((resolve, reject) => {
      const worker = new Worker(new URL("worker.mjs", this.#runtime), { type: "module" });
      const fail = (why) => {
        clearTimeout(watchdog);
        this.#drop(new CannotStart(why));
        reject(new CannotStart(why));
      };
      // A start can hang for ever (a blocked file, a wrong type): the watchdog ends it.
      const watchdog = setTimeout(() => fail("it did not start in time"), START_LIMIT_MS);
      worker.onerror = (event) => fail(event.message || "a file of the runtime is missing");
      worker.onmessage = ({ data }) => {
        if (data.broken) fail(data.broken);
        else if (data.started) {
          clearTimeout(watchdog);
          worker.onmessage = (event) => this.#receive(event.data);
          worker.onerror = (event) => this.#drop(new CannotStart(event.message));
          resolve();
        }
      };
      this.#worker = worker;
    });
    return this.#ready;
  }

  /** Fetches the part of the runtime that holds a calculator. Resolves when it can answer. */
  prepare(calculator) {
    const ready = this.start(); // a worker is there from here on
    if (!calculator) return ready;
    if (!this.#prepared.has(calculator)) {
      const asked = this.#post({ prepare: calculator }, START_LIMIT_MS, () => {
        this.#drop(new CannotStart("a part of the runtime did not come in time"));
      });
      this.#prepared.set(calculator, asked);
      asked.catch(() => this.#prepared.delete(calculator)); // another try may find it
    }
    return Promise.all([ready, this.#prepared.get(calculator)]);
  }

  /** Asks a door; the answer is parsed JSON. Rejects when it takes too long or cannot start. */
  async ask(what, request, limitMs = ANSWER_LIMIT_MS) {
    await this.prepare(request.calculator);
    const text = typeof request === "string" ? request : JSON.stringify(request);
    return this.#post({ ask: what, text }, limitMs, () => {
      this.#drop(new TookTooLong());
      this.prepare(request.calculator).catch(() => {}); // a fresh worker, ready for the next entry
    });
  }

  #post(message, limitMs, late) {
    const id = ++this.#count;
    return new Promise((resolve, reject) => {
      this.#waiting.set(id, { resolve, reject, limit: setTimeout(late, limitMs) });
      this.#worker.postMessage({ id, ...message });
    });
  }

  #receive({ id, answer, took, failed, missing, heap }) {
    const waiting = this.#waiting.get(id);
    if (!waiting) return;
    this.#waiting.delete(id);
    clearTimeout(waiting.limit);
    if (missing) waiting.reject(new CannotStart(missing));
    else if (failed) waiting.reject(new Error(failed));
    else waiting.resolve({ ...JSON.parse(answer), took });
    if (heap > HEAP_LIMIT_BYTES && this.#waiting.size === 0) this.#drop();
  }

  /** Ends the worker; whoever waits is told why. */
  #drop(reason) {
    this.#worker?.terminate();
    this.#worker = this.#ready = null;
    this.#prepared.clear();
    for (const { reject, limit } of this.#waiting.values()) {
      clearTimeout(limit);
      reject(reason ?? new Error("the calculation was ended"));
    }
    this.#waiting.clear();
  }
}
