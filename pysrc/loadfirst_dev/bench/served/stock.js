// Shows what the worker computed with numpy.
const worker = new Worker("stock-worker.js", {type: "module"});
worker.onmessage = ({data}) => {
  document.getElementById("reading").textContent = String(data);
};
