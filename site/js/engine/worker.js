// The worker: carries text between the page and the door of the Python engine. Knows nothing of either.
//
// page → worker   {ask: text}
// worker → page   {reply: text}
//                 {boot: {stage: "runtime" | "packages", done, total}}   bytes fetched, of all to fetch
//                 {boot: {stage: "ready"}}
//                 {boot: {stage: "failed", text}}   Python could not start, or died below what it can report itself

const manifest = fetch(new URL("../../runtime/manifest.json", import.meta.url)); // before the modules that need it are here
manifest.catch(() => {}); // told below

const PAUSE = 80; // [ms] between two reports of progress

let lastReport = -PAUSE;

/** Tell the page how far the start is; not every chunk of a file, but each new stage and the end. */
function report(stage) {
  const now = performance.now();
  if (stage.stage === "runtime" && stage.done < stage.total && now - lastReport < PAUSE) return;
  lastReport = now;
  postMessage({boot: stage});
}

const fail = (error) => postMessage({boot: {stage: "failed", text: String(error?.message ?? error)}});

const ready = import("./boot.js").then(({boot}) => boot(report, manifest));
ready.then(() => postMessage({boot: {stage: "ready"}}), fail);

self.onmessage = async ({data}) => {
  let handle;
  try {
    handle = await ready; // questions asked before then wait here, in order
  } catch {
    return; // the failure was told once
  }
  try {
    postMessage({reply: handle(data.ask)});
  } catch (error) {
    fail(error);
  }
};
