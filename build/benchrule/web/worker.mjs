// Runs the calculators' Python in a worker of its own, so that the page never waits for it.

const here = new URL("./", import.meta.url).href;
const CORE = "benchrule-calculators"; // the engine; each group of calculators is a part of its own
const AGAIN = self.name === "again"; // a start after one that failed: no cache is trusted
const KEEPER = self.name === "keeper"; // not for answers: it keeps its start on the device
/** The hash of every other file of the runtime, written in when it is packed. */
const HASHES = {/* HASHES */};

/** A file of the runtime that did not come as it should; ``kind`` says how, for the page's words. */
class Amiss extends Error {
  constructor(kind, why) {
    super(why);
    this.kind = kind;
  }
}

// The large files are asked for, and the interpreter is compiled, at once; left to itself the
// runtime comes to them one after the other.
const plainFetch = self.fetch;
const library = take("python_stdlib.zip", (response) => response.arrayBuffer());
const interpreter = take("pyodide.asm.wasm", compile);
const lock = take("pyodide-lock.json", (response) => response.json());
const partsOf = take("parts.json", (response) => response.json());
self.fetch = (what, options) => {
  if (String(what) === `${here}python_stdlib.zip`) return library.then((bytes) => new Response(bytes));
  // The interpreter is not fetched again: instantiateStreaming below has it already.
  if (String(what) === `${here}pyodide.asm.wasm`) return Promise.resolve(new Response());
  return plainFetch(what, options);
};
WebAssembly.instantiateStreaming = async (_, imports) => {
  const module = await interpreter;
  return { module, instance: await WebAssembly.instantiate(module, imports) };
};

// A start that was kept on the device (see kept_start.mjs) is gone on from; a worker with a name of its
// own is one that must not, and "again" and "anew" come after a worker that broke.
const STARTS = `benchrule-starts-${new URL("../../", here).href}`;
const KEPT = `${here}started`;
const BLOCK = 16_384; // words of 4 bytes that are kept or left out together
const NOTHING = new Uint32Array(); // kept where no start can be, so that none is tried again
const kept = self.name ? null : readKept().catch(() => null); // no store here, or it is refused
if (self.name && !KEEPER) letGoOfKept().catch(() => {});

/** Fetches a file, lets the browser check its hash, makes something of it; where that fails, says how. */
function take(name, make, options = {}) {
  const cache = AGAIN ? "reload" : "default";
  const made = plainFetch(here + name, { cache, integrity: HASHES[name], ...options }).then(
    async (response) => {
      if (!response.ok) throw new Amiss("missing", `${name}: ${response.status}`);
      // Networks that want a log-in, and hosts that know no error, answer with a page.
      if (isPage(response)) throw new Amiss("page", `${name}: a page came in its place`);
      try {
        return await make(response);
      } catch (error) {
        if (error instanceof Amiss) throw error;
        throw new Amiss(error instanceof TypeError ? "missing" : "other", `${name}: ${error.message}`);
      }
    },
    async (error) => {
      // A browser says the same of a file with another hash and of one that never came.
      const came = await plainFetch(here + name).catch(() => null);
      if (!came?.ok) throw new Amiss("missing", `${name}: ${came?.status ?? error.message}`);
      if (isPage(came)) throw new Amiss("page", `${name}: a page came in its place`);
      throw new Amiss("other", `${name}: not the file that was packed`);
    },
  );
  made.catch(() => {}); // said where it is waited for
  return made;
}

function isPage(response) {
  return /^text\/html/.test(response.headers.get("Content-Type") ?? "");
}

function compile(response) {
  const type = response.headers.get("Content-Type") ?? "";
  if (type.startsWith("application/wasm")) return WebAssembly.compileStreaming(response);
  return response.arrayBuffer().then((bytes) => WebAssembly.compile(bytes)); // a host that knows no wasm
}

/**
 * Imports a module of the runtime. An import takes no hash, so the file is fetched and checked first;
 * the import then has it from the browser's cache.
 */
async function load(name) {
  try {
    await take(name, (response) => response.arrayBuffer());
    return await import(`./${name}`);
  } catch (error) {
    if (error instanceof Amiss) throw error;
    await take(name, (response) => { // says what is wrong with the file, if it can
      const type = response.headers.get("Content-Type") ?? "no type";
      if (!type.includes("javascript")) throw new Amiss("type", `${name}: served as ${type}`);
    });
    throw new Amiss("other", `${name}: ${error.message}`);
  }
}

/** A part as the lock names it. */
async function fetchPart(part, options) {
  const { file_name: name } = (await lock).packages[part];
  return take(name, async (response) => new Uint8Array(await response.arrayBuffer()), options);
}

async function start() {
  const modules = Promise.all([load("pyodide.mjs"), load("pyodide.asm.mjs")]);
  const core = fetchPart(CORE);
  // Each of these fails here, with a reason, and not in the depths of the runtime.
  const [[{ loadPyodide }], archive] = await Promise.all([modules, core, interpreter, library, partsOf]);
  const image = await kept;
  if (image) {
    postMessage({ goingOn: true }); // the page sees to it that this does not hang
    try {
      return await run(loadPyodide, archive, { _loadSnapshot: image });
    } catch {
      await writeKept(NOTHING).catch(() => {}); // this browser cannot; the start goes on all the same
    }
  }
  return run(loadPyodide, archive, KEEPER ? { _makeSnapshot: true } : {});
}

async function run(loadPyodide, archive, options) {
  const python = await loadPyodide({
    indexURL: here,
    stdLibURL: `${here}python_stdlib.zip`,
    lockFileContents: await lock,
    packageBaseUrl: here,
    ...options,
  });
  // Imported from the archive as it is: only what a page asks for is unpacked.
  python.FS.writeFile(`/${CORE}.whl`, archive);
  const goesOn = Boolean(options._loadSnapshot);
  if (!goesOn) python.pyimport("sys").path.insert(0, `/${CORE}.whl`);
  return { python, door: python.pyimport("calculators.engine.door"), goesOn };
}

const started = start();
if (KEEPER) {
  started.then(keep).then(
    () => postMessage({ kept: true }),
    (error) => postMessage({ amiss: saying(error) }),
  );
} else {
  started.then(
    ({ goesOn }) => postMessage({ started: true, goesOn }),
    (error) => postMessage({ amiss: saying(error) }),
  );
}

/** The memory of an earlier start, if this very browser kept it and it is whole. */
async function readKept() {
  const found = await caches.match(KEPT, { cacheName: STARTS });
  if (!found) return null;
  const packed = await found.arrayBuffer();
  const { headers } = found;
  const sound = headers.get("User-Agent") === navigator.userAgent && headers.get("Repr-Digest") === (await sumOf(packed));
  if (!sound) await letGoOfKept(); // it is made anew
  return sound && packed.byteLength ? unpack(packed) : null;
}

async function keep({ python }) {
  let packed = NOTHING;
  try {
    packed = pack(python.makeMemorySnapshot());
  } catch (error) {
    console.warn(`this start cannot be kept: ${error.message}`);
  }
  await writeKept(packed);
}

/** A memory without the blocks in which all is zero, more than half of it: how many words it has, how many
 *  blocks are kept, where they stand, and the blocks. */
function pack(image) {
  const words = new Uint32Array(image.buffer, image.byteOffset, image.byteLength / 4);
  const places = [];
  for (let at = 0; at < words.length; at += BLOCK) {
    if (words.subarray(at, at + BLOCK).some((word) => word !== 0)) places.push(at);
  }
  const packed = new Uint32Array(2 + places.length * (1 + BLOCK));
  packed.set([words.length, places.length, ...places]);
  places.forEach((at, nth) => packed.set(words.subarray(at, at + BLOCK), 2 + places.length + nth * BLOCK));
  return packed;
}

function unpack(packed) {
  const [length, count] = new Uint32Array(packed, 0, 2);
  const places = new Uint32Array(packed, 8, count);
  const blocks = new Uint32Array(packed, 8 + 4 * count);
  const image = new Uint32Array(length);
  places.forEach((at, nth) => image.set(blocks.subarray(nth * BLOCK, nth * BLOCK + Math.min(BLOCK, length - at)), at));
  return image.buffer;
}

async function writeKept(packed) {
  const headers = {
    "Content-Type": "application/octet-stream",
    "Content-Length": String(packed.byteLength),
    "User-Agent": navigator.userAgent,
    "Repr-Digest": await sumOf(packed),
  };
  await (await caches.open(STARTS)).put(KEPT, new Response(packed, { headers }));
}

async function letGoOfKept() {
  if (await caches.has(STARTS)) await (await caches.open(STARTS)).delete(KEPT);
}

/** As in RFC 9530. */
async function sumOf(bytes) {
  const sum = await crypto.subtle.digest("SHA-256", bytes);
  return `sha-256=:${btoa(String.fromCharCode(...new Uint8Array(sum)))}:`;
}

function saying(error) {
  return { kind: error?.kind ?? "failed", why: String(error?.message ?? error) };
}

const loaded = new Map();

/** The parts that hold a calculator: fetched while the runtime starts, once each. */
async function prepare(calculator) {
  const parts = (await partsOf)[calculator] ?? []; // an unknown name is the door's to refuse
  await Promise.all(parts.map((part) => {
    if (!loaded.has(part)) {
      loaded.set(part, addPart(part));
      loaded.get(part).catch(() => loaded.delete(part)); // another try may find it
    }
    return loaded.get(part);
  }));
}

async function addPart(part) {
  const file = await fetchPart(part).catch(() => fetchPart(part, { cache: "reload" }));
  const { python } = await started;
  python.FS.writeFile(`/${part}.whl`, file);
  python.pyimport("calculators.engine.registry").add_archive(`/${part}.whl`);
}

// What a page may ask; only what is asked for is imported.
const answers = {
  live: (python, door, text) => door.live(text),
  fields: (python, door, text) => door.live_fields(text),
  answer: (python, door, text) => door.answer_text(text),
  learn: (python, door, text) => python.pyimport("calculators.learning.door").answer(text),
  bank: (python, door, text) => python.pyimport("calculators.learning.door").load_bank(text),
  judge: (python, door, text) => python.pyimport("calculators.engine.judging").judge_text(text),
};

onmessage = async ({ data }) => {
  const { id, ask, text } = data;
  if (data.prepare) {
    await prepare(data.prepare).then(
      () => postMessage({ id, answer: "{}" }),
      // A start that fails says so itself, and what waits is asked of the next worker.
      (error) => started.then(() => postMessage({ id, amiss: saying(error) }), () => {}),
    );
    return;
  }
  const { python, door } = await started;
  postMessage({ id, begun: true });
  const from = performance.now();
  const heap = () => python._module?.HEAP8?.length ?? 0;
  try {
    const answer = answers[ask](python, door, text);
    const took = performance.now() - from;
    postMessage({ id, answer, took, heap: heap() });
  } catch (error) {
    // What Python raises leaves the interpreter sound; anything else is the interpreter's own end.
    const sound = error?.name === "PythonError" && error.type !== "MemoryError";
    postMessage({ id, [sound ? "failed" : "ended"]: String(error?.message ?? error), heap: heap() });
  }
};
