// Runs Python for the tests, in the site's own Python; see conftest.py for the packs.
import {bootPython} from "../js/engine/boot.js";
import {unpack} from "../js/engine/pack.js";

const SITE_PACKAGES = "/lib/python3.14/site-packages";

const bytes = async (name) => new Uint8Array(await (await fetch(new URL(name, import.meta.url))).arrayBuffer());

const ready = Promise.all([bootPython(), bytes("wheels.pack"), bytes("clone.pack")]).then(([pyodide, wheels, clone]) => {
  unpack(pyodide.FS, SITE_PACKAGES, wheels);
  unpack(pyodide.FS, "/clone", clone);
  pyodide.pyimport("importlib").invalidate_caches();
  return pyodide;
});

self.onmessage = async ({data: {id, code}}) => {
  try {
    const pyodide = await ready;
    postMessage({id, value: pyodide.runPython(code)});
  } catch (error) {
    postMessage({id, error: String(error)});
  }
};
