// Put into the page before its own scripts: notes inputs of the valve's slider, asks, and what each frame painted.
(() => {
  const marks = {inputs: [], asks: [], paints: []};
  globalThis.benchMarks = {noted: marks, clear: () => Object.values(marks).forEach((list) => list.splice(0))};
  const SLIDER = "valve-opening";
  const READINGS = ["gauge-suction", "gauge-discharge", "flow-meter"];
  let pointer = null; // when the pointer moved that made the next input

  addEventListener("pointermove", (event) => (pointer = event.timeStamp), true);
  addEventListener("input", ({target, timeStamp}) => {
    if (target.id === SLIDER) marks.inputs.push({at: timeStamp, moved: pointer ?? timeStamp, opening: Number(target.value)});
  }, true);

  const post = Worker.prototype.postMessage;
  Worker.prototype.postMessage = function (message, ...rest) {
    const ask = message?.ask && JSON.parse(message.ask);
    if (ask?.kind === "answer") marks.asks.push({id: ask.id, opening: ask.body.edits["valve.opening"] ?? null});
    return post.call(this, message, ...rest);
  };

  const read = (id) => {
    const node = document.querySelector(`#apparatus [data-reading="${id}"]`);
    const digits = node?.querySelector(".dial-reading, .meter-reading")?.textContent ?? "";
    return [Number(node?.getAttribute("aria-valuenow")), digits];
  };
  const frame = new MessageChannel();
  frame.port1.onmessage = () => { // runs when the frame is on its way: what is there now is what it shows
    if (document.querySelector("#apparatus .drawing-svg")) marks.paints.push({at: performance.now(), shown: READINGS.map(read)});
  };
  const tick = () => {
    frame.port2.postMessage(null);
    requestAnimationFrame(tick);
  };
  requestAnimationFrame(tick);
})();
