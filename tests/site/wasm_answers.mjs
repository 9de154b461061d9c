// Answers a list of requests in the packed runtime, under Node.
// usage: node wasm_answers.mjs RUNTIME_FOLDER/ requests.json answers.json
import fs from "node:fs";
import { pathToFileURL } from "node:url";

const [folder, requests, answers] = process.argv.slice(2);
const { loadPyodide } = await import(pathToFileURL(`${folder}pyodide.mjs`).href);
const lock = JSON.parse(fs.readFileSync(`${folder}pyodide-lock.json`, "utf8"));
const python = await loadPyodide({
  indexURL: folder,
  stdLibURL: `${folder}python_stdlib.zip`,
  lockFileContents: lock,
  packageBaseUrl: folder,
});
const put = (part) => {
  const file = lock.packages[part].file_name;
  python.FS.writeFile(`/${file}`, new Uint8Array(fs.readFileSync(folder + file)));
  return `/${file}`;
};
const core = "benchrule-calculators";
python.pyimport("sys").path.insert(0, put(core));
const registry = python.pyimport("calculators.engine.registry");
for (const part of Object.keys(lock.packages)) if (part !== core) registry.add_archive(put(part));
const door = python.pyimport("calculators.engine.door");
const asked = JSON.parse(fs.readFileSync(requests, "utf8"));
fs.writeFileSync(answers, JSON.stringify(asked.map((text) => door.answer_text(text))));
process.exit(0);
