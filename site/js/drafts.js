// Answers that were picked and not given yet: those of the case in sight survive a reload. No DOM.
import {isTable} from "./tables.js";

const NAME = "draft";

/** @param {{get: (name: string) => any, set: (name: string, value: any) => void}} kept of kept.js */
export const createDrafts = (kept) => ({
  /** What was picked in the play of this key; null where nothing usable is kept. */
  of(key) {
    const {of, draft} = kept.get(NAME) ?? {};
    return of === key && isTable(draft) ? draft : null;
  },
  keep: (key, draft) => kept.set(NAME, {of: key, draft}),
  forget: () => kept.set(NAME, null),
});
