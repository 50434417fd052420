// Stock Pyodide as it is used by everybody: boot, load numpy, import it.
import {loadPyodide} from "./pyodide.mjs";

const pyodide = await loadPyodide();
await pyodide.loadPackage("numpy", {messageCallback: () => {}});
postMessage(pyodide.runPython("import numpy; float(numpy.arange(4.0).sum())"));
