// Runs the calculators' Python in a worker of its own, so that the page never waits for it.
import { loadPyodide } from "./pyodide.mjs";

const here = new URL("./", import.meta.url).href;

async function start() {
  const python = await loadPyodide({
    indexURL: here,
    stdLibURL: `${here}python_stdlib.zip`,
    lockFileURL: `${here}pyodide-lock.json`,
    packageBaseUrl: here,
    packages: ["benchrule-calculators"],
  });
  return { python, door: python.pyimport("calculators.engine.door") };
}

const started = start();
started.then(
  () => postMessage({ started: true }),
  (error) => postMessage({ broken: String(error?.message ?? error) }),
);

onmessage = async ({ data }) => {
  const { python, door } = await started;
  const { id, ask, text } = data;
  const from = performance.now();
  try {
    const answer = ask === "fields" ? door.live_fields(text) : door.live(text);
    const took = performance.now() - from;
    postMessage({ id, answer, took, heap: python._module?.HEAP8?.length ?? 0 });
  } catch (error) {
    postMessage({ id, failed: String(error?.message ?? error) });
  }
};
