// Answers a list of requests in the packed runtime, under Node.
// usage: node wasm_answers.mjs RUNTIME_FOLDER/ requests.json answers.json
import fs from "node:fs";
import { pathToFileURL } from "node:url";

const [folder, requests, answers] = process.argv.slice(2);
const { loadPyodide } = await import(pathToFileURL(`${folder}pyodide.mjs`).href);
const python = await loadPyodide({
  indexURL: folder,
  stdLibURL: `${folder}python_stdlib.zip`,
  lockFileURL: `${folder}pyodide-lock.json`,
  packageBaseUrl: folder,
  packages: ["benchrule-calculators"],
});
const door = python.pyimport("calculators.engine.door");
const asked = JSON.parse(fs.readFileSync(requests, "utf8"));
fs.writeFileSync(answers, JSON.stringify(asked.map((text) => door.answer_text(text))));
process.exit(0);
