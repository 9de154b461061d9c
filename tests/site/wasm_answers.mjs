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
const wheel = lock.packages["benchrule-calculators"].file_name;
python.FS.writeFile("/calculators.whl", new Uint8Array(fs.readFileSync(folder + wheel)));
python.runPython("import sys; sys.path.insert(0, '/calculators.whl')");
const door = python.pyimport("calculators.engine.door");
const asked = JSON.parse(fs.readFileSync(requests, "utf8"));
fs.writeFileSync(answers, JSON.stringify(asked.map((text) => door.answer_text(text))));
process.exit(0);
