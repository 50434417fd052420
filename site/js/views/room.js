// Tells the style sheet how tall header, tray and panel are, so that the rig fills what lies between the first two,
// and everything can be scrolled out from under the third.

/** Keep `--head`, `--tray` and `--parts` true; a tray that lies in the flow of the page takes no room from it. */
export function createRoom(document, header, tray, panel) {
  const root = document.documentElement;
  const measure = () => {
    const fixed = getComputedStyle(tray).position === "fixed";
    root.style.setProperty("--tray", fixed ? `${tray.offsetHeight}px` : "0px");
    root.style.setProperty("--head", `${header.offsetHeight}px`);
    root.style.setProperty("--parts", `${beside(panel) ? 0 : panel.offsetHeight}px`);
  };
  const observer = new ResizeObserver(measure);
  for (const node of [header, tray, panel]) observer.observe(node);
  addEventListener("resize", measure);
}

/** Whether it lies beside the drawings, not under them. */
const beside = (panel) => getComputedStyle(panel).top === "0px";
