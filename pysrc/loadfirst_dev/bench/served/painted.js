// Put into a page before its own scripts: tells when what is waited for was first painted.
// The function that looks for it, `benchWanted`, is defined above this by the tool.
globalThis.benchPainted = new Promise((resolve) => {
  const channel = new MessageChannel();
  channel.port1.onmessage = () => resolve(performance.now()); // runs when the frame is on its way
  const look = () => {
    if (benchWanted()) channel.port2.postMessage(null);
    else requestAnimationFrame(look);
  };
  requestAnimationFrame(look);
});
