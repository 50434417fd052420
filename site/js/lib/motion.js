// One clock for everything that moves in a drawing. It runs only while
// something has a reason to move and the page can be seen.

/**
 * @param {Window} window
 * @param {(seconds: number) => boolean} step  moves things on by a time; false when nothing is left to move
 * @returns {{wake: () => void, stop: () => void}}
 */
export function createMotion(window, step) {
  let frame = 0, before = 0;
  const run = (now) => {
    const seconds = before ? Math.min(0.1, (now - before) / 1000) : 0;
    before = now;
    frame = step(seconds) ? window.requestAnimationFrame(run) : 0;
    if (!frame) before = 0;
  };
  return {
    wake() {
      if (!frame) frame = window.requestAnimationFrame(run);
    },
    stop() {
      if (frame) window.cancelAnimationFrame(frame);
      frame = before = 0;
    },
  };
}
