// Has a puzzle made for practice: asks Python for piece after piece until a draw holds, and says how far it is. No DOM.

/**
 * @param {(kind: string, body: object, channel: string) => Promise<object>} ask of the engine
 * @param {() => void} changed  there is something else to show
 */
export function createMaker(ask, changed) {
  let turn = 0;
  let now = Object.freeze({stage: "idle"});
  let most = null; // draws that are made at most, as the engine said last

  function become(next) {
    now = Object.freeze(next);
    changed();
  }

  /**
   * @param {{seed: number, level: string|null}} wish
   * @param {(file: {name: string, text: string}, wish: object) => void} made
   * @param {number} [tried] draws that were refused already
   */
  async function make(wish, made, tried = 0) {
    const mine = (turn += 1);
    const body = {seed: wish.seed, ...(wish.level && {level: wish.level})};
    become({stage: "making", wish, tried, most, doing: null, done: 0, of: 0});
    for (;;) {
      const reply = await ask("compose", {...body, tried}, "compose").catch((error) => ({error}));
      if (mine !== turn) return;
      if (reply.error) return become({stage: "failed", wish, tried, error: reply.error, again: () => make(wish, made, tried)});
      if (reply.done) {
        become({stage: "idle"});
        return made({name: reply.name, text: reply.text}, wish);
      }
      ({tried, most} = reply);
      become({stage: "making", wish, tried, most, doing: reply.doing ?? now.doing, done: reply.reckoned, of: reply.of});
    }
  }

  return {
    make,
    /** Give it up; the piece under way is answered to nobody. */
    stop() {
      turn += 1;
      become({stage: "idle"});
    },
    /** {stage: "idle"}; {stage: "making", wish, tried, most, doing, done, of}; {stage: "failed", wish, tried, error, again}. */
    get now() {
      return now;
    },
  };
}
