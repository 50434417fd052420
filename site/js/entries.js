// The browser's history: going between rig and puzzle is an entry of its own, nothing else a person does is.

/**
 * Entries that one opened link gave rise to are a chain: going back and forth within it changes the place and
 * nothing else, so that neither the rig nor the play loses what was done meanwhile.
 *
 * @param {{history: History, location: Location}} of
 * @param {number} [start] tells this visit's chains from those of an earlier one
 */
export function createEntries({history, location}, start = performance.timeOrigin) {
  let links = 0;
  let chain = `${start}`;

  return {
    /** The page was opened at a place. */
    begin(place) {
      history.replaceState({place, chain}, "", location.href);
    },
    /** Put an address into the present entry, or into a new one when the place is another. */
    write(address, place) {
      const stands = history.state?.place ?? place;
      history[stands === place ? "replaceState" : "pushState"]({place, chain}, "", address);
    },
    /** Where the entry that was gone to is of the same chain, but of another place: that place; else null. */
    place(now) {
      const entry = history.state;
      return entry?.chain === chain && entry.place !== now ? entry.place : null;
    },
    /** A link was opened, or an entry of another chain. */
    adopt() {
      chain = history.state?.chain ?? `${start} ${(links += 1)}`;
    },
  };
}
