// Runs the calculators' Python in a worker of its own, so that the page never waits for it.

const here = new URL("./", import.meta.url).href;
const CORE = "benchrule-calculators"; // the engine; each group of calculators is a part of its own

// The large files are asked for, and the interpreter is compiled, at once; left to itself the
// runtime comes to them one after the other.
const plainFetch = self.fetch;
const library = plainFetch(`${here}python_stdlib.zip`);
const interpreter = WebAssembly.compileStreaming(plainFetch(`${here}pyodide.asm.wasm`));
interpreter.catch(() => {}); // said below, where it is waited for
self.fetch = (what, options) => {
  if (String(what) === `${here}python_stdlib.zip`) return library;
  // The interpreter is not fetched again: instantiateStreaming below has it already.
  if (String(what) === `${here}pyodide.asm.wasm`) return Promise.resolve(new Response());
  return plainFetch(what, options);
};
WebAssembly.instantiateStreaming = async (_, imports) => {
  const module = await interpreter;
  return { module, instance: await WebAssembly.instantiate(module, imports) };
};

const lock = plainFetch(`${here}pyodide-lock.json`).then((response) => response.json());
const partsOf = plainFetch(`${here}parts.json`).then((response) => response.json());

/** A part as the lock names it; the browser refuses a file whose hash is another. */
async function fetchPart(part) {
  const { file_name: name, sha256 } = (await lock).packages[part];
  const bytes = sha256.match(/../g).map((pair) => parseInt(pair, 16));
  const integrity = `sha256-${btoa(String.fromCharCode(...bytes))}`;
  const response = await plainFetch(here + name, { integrity });
  if (!response.ok) throw new Error(`${name}: ${response.status}`);
  return new Uint8Array(await response.arrayBuffer());
}

async function start() {
  const modules = Promise.all([import("./pyodide.mjs"), import("./pyodide.asm.mjs")]);
  const core = fetchPart(CORE);
  core.catch(() => {}); // said below, where it is waited for
  const [{ loadPyodide }] = await modules;
  await interpreter; // fails here, with a reason, and not in the depths of the runtime
  const python = await loadPyodide({
    indexURL: here,
    stdLibURL: `${here}python_stdlib.zip`,
    lockFileContents: await lock,
    packageBaseUrl: here,
  });
  // Imported from the archive as it is: only what a page asks for is unpacked.
  python.FS.writeFile(`/${CORE}.whl`, await core);
  python.pyimport("sys").path.insert(0, `/${CORE}.whl`);
  return { python, door: python.pyimport("calculators.engine.door") };
}

const started = start();
started.then(
  () => postMessage({ started: true }),
  (error) => postMessage({ broken: String(error?.message ?? error) }),
);

const loaded = new Map();

/** The parts that hold a calculator: fetched while the runtime starts, once each. */
async function prepare(calculator) {
  const parts = (await partsOf)[calculator] ?? []; // an unknown name is the door's to refuse
  const files = parts.map((part) => {
    if (!loaded.has(part)) loaded.set(part, addPart(part));
    return loaded.get(part);
  });
  try {
    await Promise.all(files);
  } catch (error) {
    for (const part of parts) loaded.delete(part); // another try may find them
    throw error;
  }
}

async function addPart(part) {
  const file = await fetchPart(part);
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
    try {
      await prepare(data.prepare);
      postMessage({ id, answer: "{}" });
    } catch (error) {
      postMessage({ id, missing: String(error?.message ?? error) });
    }
    return;
  }
  const { python, door } = await started;
  const from = performance.now();
  try {
    const answer = answers[ask](python, door, text);
    const took = performance.now() - from;
    postMessage({ id, answer, took, heap: python._module?.HEAP8?.length ?? 0 });
  } catch (error) {
    postMessage({ id, failed: String(error?.message ?? error) });
  }
};
