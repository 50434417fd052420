// Tells the style sheet how tall header and tray are, so that the rig fills what lies between them.

/** Keep `--head` and `--tray` true; a tray that lies in the flow of the page takes no room from it. */
export function createRoom(document, header, tray) {
  const root = document.documentElement;
  const measure = () => {
    const fixed = getComputedStyle(tray).position === "fixed";
    root.style.setProperty("--tray", fixed ? `${tray.offsetHeight}px` : "0px");
    root.style.setProperty("--head", `${header.offsetHeight}px`);
  };
  const observer = new ResizeObserver(measure);
  for (const node of [header, tray]) observer.observe(node);
  addEventListener("resize", measure);
}
