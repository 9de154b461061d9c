// Compiles zips of Python source to zips of bytecode inside the very interpreter that will run
// them in the browser. usage: node compile.mjs job.json
// job: {pyodide: folder, zips: [{from, to, leaveOut: [pattern]}]}
import fs from "node:fs";
import path from "node:path";
import { pathToFileURL } from "node:url";

const job = JSON.parse(fs.readFileSync(process.argv[2], "utf8"));
const { loadPyodide } = await import(pathToFileURL(path.join(job.pyodide, "pyodide.mjs")).href);
// A fixed hash seed makes marshalled sets come out in one order: two builds give the same bytes.
const python = await loadPyodide({ indexURL: job.pyodide, env: { PYTHONHASHSEED: "0" } });
python.runPython(`
import importlib.util, re, zipfile
import importlib._bootstrap_external as external

def compile_zip(source, target, leave_out):
    leave = [re.compile(pattern) for pattern in leave_out]
    with zipfile.ZipFile(source) as read, zipfile.ZipFile(target, "w", 8, compresslevel=9) as write:
        for name in sorted(n for n in read.namelist() if not n.endswith("/")):
            if any(pattern.match(name) for pattern in leave):
                continue
            data = read.read(name)
            if name.endswith(".py"):
                code = compile(data, name, "exec", dont_inherit=True, optimize=0)
                # Unchecked: the source is not there to be compared with.
                data = external._code_to_hash_pyc(code, importlib.util.source_hash(data), False)
                name += "c"
            info = zipfile.ZipInfo(name, (2020, 1, 1, 0, 0, 0))
            info.compress_type = 8
            write.writestr(info, data)
`);
const compileZip = python.globals.get("compile_zip");
for (const { from, to, leaveOut } of job.zips) {
  python.FS.writeFile("/in.zip", fs.readFileSync(from));
  compileZip("/in.zip", "/out.zip", python.toPy(leaveOut));
  fs.writeFileSync(to, python.FS.readFile("/out.zip"));
}
process.exit(0);
