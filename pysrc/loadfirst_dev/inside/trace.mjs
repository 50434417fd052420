// Runs the door's Python in Node and tells which files that used; see trace.py for the result.
import {readFileSync, writeFileSync} from "node:fs";
import {pathToFileURL} from "node:url";
import {job, python} from "./python.mjs";

const {packs, tracer, result, ...rest} = job();
const {openDoor} = await import(pathToFileURL(rest.start).href);
const pyodide = await python(rest);
const nothing = {bring: () => {}, modules: {}}; // while building, everything is here
openDoor(pyodide, packs.map((path) => readFileSync(path)), nothing);
writeFileSync(result, pyodide.runPython(readFileSync(tracer, "utf8")));
process.exit(0); // the runtime keeps Node awake
