// What every suspect would show is reckoned while the learner still looks round: by the verdict it is known.

/**
 * @param {object} deps {ask}
 * @returns {{go: (key: string, play: object) => Promise<void>, stop: () => void}}
 *   `go` goes on with the play of that key until all is reckoned; asked again for the same key it does nothing
 */
export function createAhead({ask}) {
  let under = null; // the key of what is being reckoned, or was

  async function go(key, play) {
    if (key === under) return;
    under = key;
    for (;;) {
      const answer = await ask("debrief", play, "ahead").catch(() => null); // whoever asks in earnest is told what went wrong
      if (under !== key || !answer || answer.done === answer.of) return;
    }
  }

  return {go, stop: () => { under = null; }};
}
