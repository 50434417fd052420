// Starts Python from parts that are already here. Needs no browser: the build starts it the same way in Node.

import {unpack} from "./pack.js";

/** Where Python looks for its standard library, and for packages. */
const LIBRARY = "/lib/python3.14";
const PACKAGES = `${LIBRARY}/site-packages`;

/** What the precompiled files were compiled for; numpy asks for it too. */
const SETTINGS = {PYTHONOPTIMIZE: "2", PYTHONDONTWRITEBYTECODE: "1"};

/**
 * Python, without any package. Rejects where the runtime itself would only log and wait for ever.
 * @param {object} parts
 * @param {Function} parts.loadPyodide  from Pyodide's own module
 * @param {Function} parts.createModule  the compiled runtime's JavaScript half, its default export
 * @param {WebAssembly.Module} parts.wasm  the compiled runtime
 * @param {object} parts.lock  `info` of the release's lock file; packages are never looked up
 * @param {string} parts.indexURL  where the runtime stands
 * @param {string} parts.stdLibURL  where its standard library stands, as a zip
 * @param {Uint8Array} [parts.library]  a pack of the standard library, beside an empty zip: files are
 *   imported faster than from a zip, which Python reads by Python code
 * @param {object} [parts.env]  more settings of Python
 * @returns {Promise<object>} Pyodide
 */
export function startPython({loadPyodide, createModule, wasm, lock, indexURL, stdLibURL, library, env = {}}) {
  return new Promise((resolve, reject) => {
    const createPyodideModule = (settings) => {
      settings.instantiateWasm = (imports, done) => {
        markErrors(imports.env);
        WebAssembly.instantiate(wasm, imports).then((instance) => done(instance, wasm), reject);
        return {}; // Emscripten: the exports come later, through `done`
      };
      if (library) settings.preRun.push(({FS}) => unpack(FS, LIBRARY, library));
      return createModule(settings);
    };
    loadPyodide({
      indexURL,
      stdLibURL,
      createPyodideModule,
      lockFileContents: JSON.stringify({info: lock, packages: {}}),
      packageBaseUrl: indexURL,
      env: {...SETTINGS, ...env},
    }).then(resolve, reject);
  });
}

/** The two imports that tell Python's marker of an error from any other object. */
function markErrors(env) {
  const marker = Symbol("error");
  env.Jsv_GetError_import = () => marker;
  env.JsvError_Check = (value) => value === marker;
}

/**
 * Put the packages in place and give the door's one function.
 * @param {object} pyodide  from `startPython`
 * @param {Uint8Array[]} packs  see pack.js
 * @param {object} late  files that are fetched only when something in them is imported
 * @param {(key: string) => void} late.bring  fetches one, without returning before it is unpacked
 * @param {Object<string, string>} late.modules  names of the modules in each, between spaces
 * @returns {(text: string) => string} a question as JSON text in, the reply as JSON text out
 */
export function openDoor(pyodide, packs, late) {
  addPackages(pyodide, packs, late);
  return pyodide.runPython("from loadfirst.door.handle import handle; handle");
}

/** Packages on Python's path, and the late imports behind them. See `openDoor`. */
export function addPackages(pyodide, packs, late) {
  for (const pack of packs) unpack(pyodide.FS, PACKAGES, pack);
  pyodide.pyimport("sitecustomize").add_packages();
  pyodide.pyimport("late_imports").install(late.bring, JSON.stringify(late.modules));
}
