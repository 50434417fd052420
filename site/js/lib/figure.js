// The frame that every drawn view stands in: one <svg> in its host, drawn anew
// when its size or its plan changes, and only touched up at every answer.

import {el, set} from "./svg.js";

/**
 * @param {HTMLElement} host
 * @param {Document} document
 * @param {string} name   class of the drawing, such as "stack"
 * @param {object} view
 * @param {(host: HTMLElement, model: object|null) => {width: number, height: number}} view.size
 * @param {(model: object, size: object) => string} [view.plan]  text that changes when the drawing must be rebuilt
 * @param {(svg: SVGSVGElement, model: object, size: object) => {update: (model: object) => void, remove?: () => void}} view.build
 */
export function createFigure(host, document, name, {size, plan = () => "", build}) {
  const svg = el(document, "svg", {class: `drawing-svg ${name}`});
  let model = null, drawn = null, key = "";
  host.append(svg);

  const update = (next = model) => {
    model = next;
    if (!model) return;
    const box = size(host, model);
    const wanted = `${box.width}×${box.height} ${plan(model, box)}`;
    if (wanted !== key) rebuild(box, wanted);
    set(svg, "data-origin", model.origin ?? (model.answer ? "live" : "none"));
    drawn.update(model);
  };
  const rebuild = (box, wanted) => {
    const focused = svg.contains(document.activeElement) ? document.activeElement.getAttribute("data-control") : null;
    drawn?.remove?.();
    svg.replaceChildren();
    set(svg, "viewBox", `0 0 ${box.width} ${box.height}`);
    drawn = build(svg, model, box);
    key = wanted;
    if (focused) svg.querySelector(`[data-control="${focused}"]`)?.focus();
  };
  const observer = watch(host, document, () => update());
  return {
    update,
    remove() {
      observer?.disconnect();
      drawn?.remove?.();
      svg.remove();
    },
  };
}

function watch(host, document, changed) {
  const {ResizeObserver, requestAnimationFrame} = document.defaultView ?? {};
  if (!ResizeObserver) return null;
  let width = host.clientWidth;
  const observer = new ResizeObserver(() => {
    if (host.clientWidth === width) return;
    width = host.clientWidth;
    requestAnimationFrame(changed); // not inside the observer: it would report a loop
  });
  observer.observe(host);
  return observer;
}
