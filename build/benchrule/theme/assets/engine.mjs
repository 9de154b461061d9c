// The engine: one Python worker for the whole visit, watched. It is started when a reader is about
// to use it, ended when a calculation hangs or breaks it, and replaced by a fresh one.

const LIMITS = {
  start: 30_000, // until the page says that it waits; the start itself goes on
  giveUp: 300_000, // until a start that never settles is ended
  goOn: 10_000, // until a start that goes on from a kept one, in half a second, is made from nothing
  answer: 5_000,
  silence: 5_000, // until a worker that takes up nothing counts as dead
  rest: 3_000, // after a start that failed, before an entry may start another
};
const HEAP_LIMIT_BYTES = 256 * 1024 * 1024; // a wasm heap never shrinks: past this, start afresh
const GRACE_MS = 250; // a page that slept finds its timers run out before the answers are read

/**
 * The worker cannot start. ``kind`` says why; its words are in trouble.mjs. ``rested`` resolves when
 * an entry may start another.
 */
export class CannotStart extends Error {
  constructor(kind, why, later) {
    super(why);
    this.kind = kind;
    this.later = later; // of a late one: resolves if it starts after all
  }
}
/** A calculation took longer than it may, and was ended with its worker. */
export class TookTooLong extends Error {}
/** The worker broke in the middle of a calculation. */
export class Ended extends Error {}
/** The calculators' program failed on a request; the worker is sound. */
export class Failed extends Error {}
class NotBegun extends Ended {}

export class Engine {
  #runtime;
  #limits;
  #worker = null;
  #started = null;
  #starting = null; // settles the promise above, once
  #turn = 0;
  #failure = null;
  #restart = false;
  #broke = false; // on this visit a worker broke or did not start: no kept start is trusted any more
  #waiting = new Map();
  #heeding = [];
  #prepared = new Map();
  #count = 0;

  /** ``limits`` in milliseconds take the place of those above. */
  constructor(runtime, limits = {}) {
    this.#runtime = runtime;
    this.#limits = { ...LIMITS, ...limits };
  }

  /** The folder of the runtime. */
  get runtime() {
    return this.#runtime;
  }

  /** Whether a worker broke on this visit, or did not start. */
  get hasBroken() {
    return this.#broke;
  }

  /** Starts the worker if it is not there. Resolves when it can answer, rejects when that is late. */
  start() {
    return this.#inTime(this.#start());
  }

  /** Whether it is being started, fetches a part, or owes an answer. */
  get isBusy() {
    return this.#starting !== null || this.#waiting.size > 0;
  }

  /** Calls back whenever that may have changed. */
  heed(act) {
    this.#heeding.push(act);
  }

  #tell() {
    for (const act of this.#heeding) act();
  }

  /** Fetches the part of the runtime that holds a calculator. Resolves when it can answer. */
  prepare(calculator) {
    const started = this.#start();
    if (!calculator) return this.#inTime(started);
    if (!this.#prepared.has(calculator)) {
      const asked = this.#post({ prepare: calculator });
      this.#prepared.set(calculator, asked);
      asked.catch((error) => this.#rest(error, () => {
        if (this.#prepared.get(calculator) === asked) this.#prepared.delete(calculator);
      }));
    }
    return this.#inTime(Promise.all([started, this.#prepared.get(calculator)]));
  }

  /** Asks a door; the answer is parsed JSON. Rejects with one of the errors above. */
  async ask(what, request, limitMs = this.#limits.answer) {
    const text = typeof request === "string" ? request : JSON.stringify(request);
    for (let turn = 1; ; turn++) {
      await this.prepare(request.calculator);
      try {
        return await this.#post({ ask: what, text }, limitMs);
      } catch (error) {
        if (error instanceof NotBegun && turn < 3) continue; // another's fault: the fresh worker is asked
        if (error instanceof Ended || error instanceof TookTooLong) {
          this.prepare(request.calculator).catch(() => {}); // ready for the next entry
        }
        throw error;
      }
    }
  }

  /** Forgets a start that failed or that is late, so that the next request makes a fresh one. */
  tryAgain() {
    this.#restart = true;
    this.#failure = null;
    this.#forgetPrepared();
    const late = this.#partsAwaited().length > 0;
    if (this.#worker && (late || !this.#worker.started)) this.#drop(this.#worker, new Ended("started anew"));
  }

  /** A failure stands for a while, so that what is entered meanwhile does not fetch and fail anew. */
  #rest(error, forget) {
    error.rested ??= new Promise((resolve) => setTimeout(resolve, this.#limits.rest));
    error.rested.then(forget);
  }

  /** The calculators whose part has been asked for and has not come. */
  #partsAwaited() {
    return [...this.#waiting.values()].map(({ message }) => message.prepare).filter(Boolean);
  }

  /** Forgets what came or failed; what is still on its way is the next worker's to bring. */
  #forgetPrepared() {
    const awaited = this.#partsAwaited();
    for (const name of this.#prepared.keys()) {
      if (!awaited.includes(name)) this.#prepared.delete(name);
    }
  }

  #start() {
    if (this.#failure) return Promise.reject(this.#failure);
    if (!this.#started) {
      this.#started = new Promise((resolve, reject) => (this.#starting = { resolve, reject }));
      this.#started.catch(() => {}); // said where it is waited for
      this.#run();
      this.#tell();
    }
    return this.#started;
  }

  /** One start; whoever waits goes on with the next one where this one is ended in the middle. */
  async #run() {
    const turn = ++this.#turn;
    const fresh = this.#restart;
    this.#restart = false;
    try {
      await this.#launchTwice(fresh);
      if (turn !== this.#turn) return;
      this.#starting.resolve();
      this.#starting = null;
      this.#tell();
    } catch (error) {
      if (turn !== this.#turn) return;
      this.#failure = error;
      this.#rest(error, () => {
        if (this.#failure === error) this.#failure = null;
      });
      this.#end(error);
    }
  }

  /** A second start, past every cache, mends what was missing or spoilt for a moment. */
  async #launchTwice(fresh) {
    try {
      await this.#launch(fresh);
    } catch (error) {
      if (fresh || !["missing", "page", "other"].includes(error.kind)) throw error;
      await this.#launch(true);
    }
  }

  async #launch(fresh) {
    if (!("WebAssembly" in window)) throw new CannotStart("browser", "WebAssembly is not there");
    this.#worker?.terminate();
    const address = new URL("worker.mjs", this.#runtime);
    const place = { terminate() {} }; // until the worker is there; gone where this start was ended
    this.#worker = place;
    if (fresh) await readFreshly(address);
    if (this.#worker !== place) throw new CannotStart("late", "this start was ended");
    this.#broke ||= fresh;
    const name = fresh ? "again" : this.#broke ? "anew" : "";
    const worker = new Worker(address, { type: "module", name });
    this.#worker = worker;
    for (const [id, { message }] of this.#waiting) worker.postMessage({ id, ...message });
    await new Promise((resolve, reject) => {
      const giveUp = setTimeout(() => reject(new CannotStart("late", "it was given up")), this.#limits.giveUp);
      let goOn;
      const settle = () => [giveUp, goOn].forEach(clearTimeout);
      const fail = ({ kind, why }) => {
        settle();
        reject(new CannotStart(kind, why));
      };
      worker.onerror = (event) => {
        event.preventDefault();
        // Nothing more is said of a worker that does not load; read freshly, its file was there.
        fail({ kind: fresh || event.message ? "other" : "missing", why: event.message ?? "worker.mjs" });
      };
      worker.onmessage = ({ data }) => {
        if (data.id) this.#receive(data);
        else if (data.amiss) fail(data.amiss);
        else if (data.goingOn) goOn = setTimeout(() => this.#drop(worker, new Ended("it did not go on")), this.#limits.goOn);
        else {
          settle();
          worker.started = true;
          worker.onmessage = (event) => this.#receive(event.data);
          worker.onerror = (event) => this.#drop(worker, new Ended(event.message));
          resolve();
        }
      };
    });
  }

  #inTime(promise) {
    let timer;
    const late = new Promise((_, reject) => {
      const say = () => reject(new CannotStart("late", "it did not start in time", promise));
      timer = setTimeout(() => setTimeout(say, GRACE_MS), this.#limits.start);
    });
    return Promise.race([promise, late]).finally(() => clearTimeout(timer));
  }

  #post(message, limitMs) {
    const id = ++this.#count;
    return new Promise((resolve, reject) => {
      this.#waiting.set(id, { message, limitMs, resolve, reject, begun: false });
      this.#worker?.postMessage?.({ id, ...message }); // one that comes yet is sent all that waits
      if (message.ask) this.#watch(id, this.#limits.silence);
      this.#tell();
    });
  }

  /** Ends the worker where a question has not been taken up, or answered, in its time. */
  #watch(id, limitMs) {
    const waiting = this.#waiting.get(id);
    clearTimeout(waiting.timer);
    const worker = this.#worker;
    const watch = (waiting.watch = {});
    const ripe = () => {
      if (!this.#waiting.has(id) || waiting.watch !== watch || this.#worker !== worker) return;
      if (waiting.begun) this.#drop(worker, new TookTooLong("it took too long"));
      else if ([...this.#waiting.values()].some(({ begun }) => begun)) this.#watch(id, this.#limits.silence);
      else this.#drop(worker, new Ended("the worker gave no sign of life"));
    };
    waiting.timer = setTimeout(() => setTimeout(ripe, GRACE_MS), limitMs);
  }

  #receive({ id, begun, answer, took, failed, ended, amiss, heap }) {
    const waiting = this.#waiting.get(id);
    if (!waiting) return;
    if (begun) {
      waiting.begun = true;
      this.#watch(id, waiting.limitMs);
      return;
    }
    this.#waiting.delete(id);
    clearTimeout(waiting.timer);
    if (amiss) waiting.reject(new CannotStart(amiss.kind, amiss.why));
    else if (failed) waiting.reject(new Failed(failed));
    else if (ended) waiting.reject(new Ended(ended));
    else waiting.resolve({ ...JSON.parse(answer), took });
    this.#tell();
    if (ended) this.#drop(this.#worker, new Ended("the interpreter ended"));
    else if (heap > HEAP_LIMIT_BYTES) this.#replace(this.#worker, new Ended("the worker had grown"));
  }

  /** Ends a worker that broke. */
  #drop(worker, reason) {
    if (worker !== this.#worker) return;
    this.#broke = true;
    this.#replace(worker, reason);
  }

  /** Ends a worker: what it had begun is told why, what it had not is asked of the next. */
  #replace(worker, reason) {
    worker.terminate();
    this.#worker = null;
    this.#forgetPrepared();
    for (const [id, { message, begun, timer, reject }] of this.#waiting) {
      if (message.prepare) continue; // asked of the worker that comes
      this.#waiting.delete(id);
      clearTimeout(timer);
      reject(begun ? reason : new NotBegun(reason.message));
    }
    if (this.#starting) this.#run();
    else {
      this.#started = null;
      this.#start().catch(() => {});
    }
  }

  /** Ends the worker and all that waits. */
  #end(reason) {
    this.#worker?.terminate();
    this.#starting.reject(reason);
    this.#worker = this.#started = this.#starting = null;
    this.#prepared.clear();
    const all = [...this.#waiting.values()];
    this.#waiting.clear();
    for (const { timer, reject } of all) {
      clearTimeout(timer);
      reject(reason);
    }
    this.#tell();
  }
}

/** Brings the worker's file past every cache; the worker is then made of what came. */
async function readFreshly(address) {
  const response = await fetch(address, { cache: "reload" }).catch((error) => {
    throw new CannotStart("missing", `worker.mjs: ${error.message}`);
  });
  if (!response.ok) throw new CannotStart("missing", `worker.mjs: ${response.status}`);
  const type = response.headers.get("Content-Type") ?? "no type";
  if (type.startsWith("text/html")) throw new CannotStart("page", "worker.mjs: a page came in its place");
  if (!type.includes("javascript")) throw new CannotStart("type", `worker.mjs: served as ${type}`);
}
