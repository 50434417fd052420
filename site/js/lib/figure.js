// The frame that every drawn view stands in: one <svg> in its host, drawn anew
// when its size or its plan changes, and only touched up at every answer.

import {el, set} from "./svg.js";

const LAPTOP = 1280; // [px] up to this window width a drawing's pixel is the page's pixel

/** How much larger everything is drawn in a wide window, so that the back row can read it. */
export function zoom(document) {
  const width = document.defaultView?.innerWidth ?? 0;
  return Math.min(1.6, Math.max(1, width / LAPTOP));
}

/** The size of a sheet that fills its host, in the drawing's own pixels. */
export function hostSize(host, document, {width, height, least = [180, 180]}, scale = zoom(document)) {
  return {
    width: Math.max(least[0], Math.round((host.clientWidth || width) / scale)),
    height: Math.max(least[1], Math.round((host.clientHeight || height) / scale)),
  };
}

/**
 * @param {HTMLElement} host
 * @param {Document} document
 * @param {string} name   class of the drawing, such as "stack"
 * @param {object} view
 * @param {(host: HTMLElement) => {width: number, height: number}} view.size
 * @param {(model: object, size: object) => string} [view.plan]  text that changes when the drawing must be rebuilt
 * @param {(model: object, size: object) => object} [view.fit]  the sheet that this model needs in a place of this size
 * @param {(svg: SVGSVGElement, model: object, size: object) => {update: (model: object) => void, remove?: () => void}} view.build
 */
export function createFigure(host, document, name, {size, plan = () => "", fit = (_, room) => room, build}) {
  const svg = el(document, "svg", {class: `drawing-svg ${name}`});
  let model = null, drawn = null, key = "", box = null;
  host.append(svg);

  const update = (next = model) => {
    model = next;
    if (!model) return;
    const focused = box ? null : controlInHand(); // hiding the drawing takes the focus from it
    box ??= measure(); // only after a change of size: it makes the browser lay out the page
    const wanted = `${box.width}×${box.height} ${plan(model, box)}`;
    if (wanted !== key) rebuild(wanted);
    if (focused && !controlInHand()) svg.querySelector(`[data-control="${focused}"]`)?.focus();
    set(svg, "data-origin", model.origin ?? (model.answer ? "live" : "none"));
    drawn.update(model);
  };
  /** A host that has a height of its own keeps it without the drawing. */
  const measure = () => {
    set(svg, "hidden", "");
    const room = size(host);
    svg.style.setProperty("--host-width", `${host.clientWidth}px`); // see drawing.css
    svg.style.setProperty("--host-height", `${host.clientHeight}px`);
    set(svg, "hidden", null);
    return room;
  };
  const controlInHand = () => (svg.contains(document.activeElement) ? document.activeElement.getAttribute("data-control") : null);
  const rebuild = (wanted) => {
    const focused = controlInHand();
    drawn?.remove?.();
    svg.replaceChildren();
    const sheet = fit(model, box);
    set(svg, "viewBox", `0 0 ${sheet.width} ${sheet.height}`);
    drawn = build(svg, model, sheet);
    key = wanted;
    if (focused) svg.querySelector(`[data-control="${focused}"]`)?.focus();
  };
  const resized = () => {
    box = null;
    update();
  };
  /** What is in a hand is not drawn anew under it: the new size waits until the hand lets go. */
  const observer = watch(host, document, () => {
    if (!svg.querySelector(":active")) return resized();
    const later = () => document.defaultView.requestAnimationFrame(resized);
    for (const end of ["pointerup", "pointercancel"]) document.addEventListener(end, later, {once: true});
  });
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
  const measured = () => `${host.clientWidth}×${host.clientHeight}`;
  let before = measured();
  const observer = new ResizeObserver(() => {
    if (measured() === before) return;
    before = measured();
    requestAnimationFrame(changed); // not inside the observer: it would report a loop
  });
  observer.observe(host);
  return observer;
}
