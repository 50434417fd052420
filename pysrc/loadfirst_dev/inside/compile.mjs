// Compiles the Python files of some archives with the browser's Python: job.archives is [[from, to], …].
import {readFileSync, writeFileSync} from "node:fs";
import {job, python} from "./python.mjs";

const {archives, compiler, ...rest} = job();
const pyodide = await python(rest);
pyodide.FS.writeFile("/compile.py", readFileSync(compiler, "utf8"));
pyodide.runPython("import sys; sys.path.insert(0, '/'); import compile");
for (const [from, to] of archives) {
  pyodide.FS.writeFile("/from.zip", readFileSync(from));
  pyodide.runPython("compile.compile_archive('/from.zip', '/to.zip')");
  writeFileSync(to, pyodide.FS.readFile("/to.zip"));
}
process.exit(0); // the runtime keeps Node awake
