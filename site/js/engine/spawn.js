// The one place that makes a worker; its address goes through the one trusted-types policy.

const ADDRESS = new URL("./worker.js", import.meta.url).href;

const policy = globalThis.trustedTypes?.createPolicy("loadfirst-worker", {
  createScriptURL(url) {
    if (url !== ADDRESS) throw new TypeError("only Loadfirst's own worker may be started");
    return url;
  },
});

/** A worker with Python in it; it reports its own start. */
export function spawnWorker() {
  return new Worker(policy ? policy.createScriptURL(ADDRESS) : ADDRESS, {type: "module"});
}
