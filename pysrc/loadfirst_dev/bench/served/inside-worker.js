// The site's own Python, measured from inside its worker. Lies in a folder beside the site's.
import {bootPython} from "../site/js/engine/boot.js";
import {unpack} from "../site/js/engine/pack.js";

const PACKAGES = "/lib/python3.14/site-packages";

const python = bootPython();

/** How long the door takes for each question, one after the other. [ms] */
async function answers({asks}) {
  const handle = (await python).runPython("from loadfirst.door.handle import handle; handle");
  return asks.map((ask) => {
    const started = performance.now();
    const reply = handle(ask);
    const took = performance.now() - started;
    if (!JSON.parse(reply).ok) throw new Error(reply);
    return took;
  });
}

/** Run Python text with more packages; gives its last value. */
async function run({pack, code}) {
  const pyodide = await python;
  unpack(pyodide.FS, PACKAGES, new Uint8Array(await (await fetch(new URL(pack, import.meta.url))).arrayBuffer()));
  pyodide.pyimport("importlib").invalidate_caches();
  return pyodide.runPython(code);
}

self.onmessage = async ({data}) => {
  try {
    postMessage({value: await {answers, run}[data.kind](data)});
  } catch (error) {
    postMessage({error: String(error?.message ?? error)});
  }
};
