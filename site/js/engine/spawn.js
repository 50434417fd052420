// The one place that makes a worker; its address goes through the one trusted-types policy.
// The first is made as soon as this file is read, long before the rest of the page is: Python is
// what takes longest to start.

const ADDRESS = new URL("./worker.js", import.meta.url).href;

const policy = globalThis.trustedTypes?.createPolicy("loadfirst-worker", {
  createScriptURL(url) {
    if (url !== ADDRESS) throw new TypeError("only Loadfirst's own worker may be started");
    return url;
  },
});

let early = startEarly();

/** A worker with Python in it; it reports its own start. */
export function spawnWorker() {
  const worker = early ? early.handOver() : create();
  early = null;
  return worker;
}

function create() {
  return new Worker(policy ? policy.createScriptURL(ADDRESS) : ADDRESS, {type: "module"});
}

/** A worker that starts at once, and what it says until somebody listens. */
function startEarly() {
  const worker = create();
  const said = [];
  const keep = (event) => said.push(event);
  for (const kind of ["message", "error"]) worker.addEventListener(kind, keep);
  return {
    handOver() {
      for (const kind of ["message", "error"]) worker.removeEventListener(kind, keep);
      queueMicrotask(() => said.forEach((event) => worker.dispatchEvent(repeat(event))));
      return worker;
    },
  };
}

function repeat({type, data, message}) {
  return type === "message" ? new MessageEvent("message", {data}) : new ErrorEvent("error", {message});
}
