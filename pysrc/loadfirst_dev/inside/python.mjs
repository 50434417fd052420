// Starts the browser's Python in Node, the way the page does, from a folder with the runtime's files.
import {readFileSync} from "node:fs";
import {join} from "node:path";
import {pathToFileURL} from "node:url";

/**
 * @param {object} job
 * @param {string} job.start  path of the page's start.js
 * @param {string} job.runtime  folder with pyodide.mjs, pyodide.asm.mjs, pyodide.asm.wasm
 * @param {string} job.stdlib  path of the standard library's zip
 * @param {object} job.lock  see start.js
 */
export async function python({start, runtime, stdlib, lock}) {
  const load = (path) => import(pathToFileURL(path).href);
  const {startPython} = await load(start);
  const {loadPyodide} = await load(join(runtime, "pyodide.mjs"));
  const {default: createModule} = await load(join(runtime, "pyodide.asm.mjs"));
  const wasm = await WebAssembly.compile(readFileSync(join(runtime, "pyodide.asm.wasm")));
  const env = {PYTHONHASHSEED: "0"}; // what is compiled must not depend on chance
  return startPython({loadPyodide, createModule, wasm, lock, indexURL: runtime, stdLibURL: stdlib, env});
}

/** The job that the tool wrote for this script. */
export const job = () => JSON.parse(readFileSync(process.argv[2], "utf8"));
