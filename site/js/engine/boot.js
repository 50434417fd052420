// Fetches what the manifest of the runtime names, all at once, and starts Python from it.
import {addPackages, openDoor, startPython} from "./start.js";
import {unpack} from "./pack.js";

const MANIFEST = new URL("../../runtime/manifest.json", import.meta.url);
const LATE_FOLDER = "/lib/late"; // as late_imports.py has it
const EMPTY_ZIP = new Uint8Array(22);
EMPTY_ZIP.set([0x50, 0x4b, 5, 6]); // the record that ends every zip, of no files

/**
 * Python with the engine in it, ready to answer.
 * @param {(stage: {stage: string, done: number, total: number}) => void} report
 * @param {Promise<Response>} [asked]  the manifest, where it was asked for already
 * @returns {Promise<(text: string) => string>} the door's `handle`
 */
export async function boot(report, asked) {
  const {pyodide, packs, late} = await start(report, asked);
  return openDoor(pyodide, packs, late);
}

/** Python with the engine's packages on its path, nothing imported yet. For tests. */
export async function bootPython(report = () => {}) {
  const {pyodide, packs, late} = await start(report);
  addPackages(pyodide, packs, late);
  return pyodide;
}

async function start(report, asked = fetch(MANIFEST)) {
  const manifest = await good(await asked).json();
  const progress = counter(manifest.files, report);
  const where = (key) => new URL(manifest.files[key].file, MANIFEST).href;
  const bytes = async (key) => new Uint8Array(await progress.watch(await get(where(key))).arrayBuffer());
  const script = (key) => import(where(key)).then((module) => progress.add(manifest.files[key].size, module));

  const interpreter = Promise.all([
    get(where("wasm")).then((response) => compile(progress.watch(response))),
    script("pyodide"),
    script("module"),
    bytes("stdlib"),
  ]);
  const packages = Promise.all([bytes("packages"), bytes("loadfirst")]);
  const all = Promise.all([interpreter, packages]).then(() => report({stage: "packages", ...progress.state()}));
  all.catch(() => {}); // told below, where each is needed

  const [wasm, runtime, module, library] = await interpreter;
  const pyodide = await supplied((stdLibURL) =>
    startPython({
      library,
      loadPyodide: runtime.loadPyodide,
      createModule: module.default,
      wasm,
      lock: manifest.lock,
      indexURL: new URL(".", MANIFEST).href,
      stdLibURL,
    }),
  );
  await all;
  const packs = await packages;
  return {pyodide, packs, late: lateFiles(manifest.late, pyodide.FS)};
}

/** What `openDoor` needs to fetch the rest when it is imported. */
function lateFiles(files, FS) {
  const bring = (key) => unpack(FS, LATE_FOLDER, fetchNow(new URL(files[key].file, MANIFEST)));
  return {bring, modules: Object.fromEntries(Object.entries(files).map(([key, {modules}]) => [key, modules]))};
}

const get = async (url) => good(await fetch(url));

function good(response) {
  if (!response.ok) throw new Error(`${new URL(response.url).pathname}: ${response.status} ${response.statusText}`);
  return response;
}

/** A file while Python waits for it: only workers may do that. */
function fetchNow(url) {
  const request = new XMLHttpRequest();
  request.open("GET", url, false);
  request.responseType = "arraybuffer";
  request.send();
  if (request.status !== 200) throw new Error(`${url.pathname}: ${request.status}`);
  return new Uint8Array(request.response);
}

/** Some servers do not say that a file is wasm; then it is compiled when it is all here. */
async function compile(response) {
  if (response.headers.get("Content-Type")?.startsWith("application/wasm")) {
    return WebAssembly.compileStreaming(response);
  }
  return WebAssembly.compile(await response.arrayBuffer());
}

/**
 * Run `start` while the runtime's own requests are answered from here: for its standard library it
 * gets an empty zip, for its wasm, which is compiled already, nothing.
 */
async function supplied(start) {
  const native = globalThis.fetch;
  globalThis.fetch = async (url) => new Response(String(url).endsWith("stdlib") ? EMPTY_ZIP : null);
  try {
    return await start(new URL("stdlib", MANIFEST).href);
  } finally {
    globalThis.fetch = native;
  }
}

/** Counts the bytes that have come, of those that the manifest says will come. */
function counter(files, report) {
  const total = Object.values(files).reduce((sum, file) => sum + file.size, 0);
  let done = 0;
  const state = () => ({done, total});
  const add = (size, value) => {
    done += size;
    report({stage: "runtime", ...state()});
    return value;
  };
  const watch = (response) => {
    const counted = new TransformStream({
      transform(chunk, to) {
        add(chunk.byteLength);
        to.enqueue(chunk);
      },
    });
    return new Response(response.body.pipeThrough(counted), {headers: response.headers});
  };
  return {state, add, watch};
}
