// The course as a map: families of cases, each with its first one first. No DOM.

/** For whom cases are meant, the easiest first. */
export const LEVELS = Object.freeze(["first-steps", "operator", "engineer"]);

const levelOf = ({level}) => LEVELS.indexOf(level);

/** The families of the course, in the order in which they are to be learnt. */
export const COURSE = Object.freeze([
  "a-lower-gauge", "less-flow", "more-current", "short-of-liquid", "two-pumps", "the-drive", "another-liquid", "the-instrument", "a-controller-hides",
]);

/**
 * @param {{id: string, title: string, level: string, family: string, worked: boolean, after: string[]}[]} cases of the catalogue
 * @returns {{family: string, cases: object[]}[]} in the order of the course; in a family the worked case, then what comes after what
 */
export function families(cases) {
  const found = Map.groupBy ? Map.groupBy(cases, ({family}) => family) : grouped(cases);
  return [...found].map(([family, all]) => ({family, cases: ordered(all)}))
    .sort((a, b) => placeOf(a.family) - placeOf(b.family) || levelOf(a.cases[0]) - levelOf(b.cases[0]) || a.family.localeCompare(b.family));
}

/** Where a family stands in the course; one that it does not know comes behind. */
const placeOf = (family) => (COURSE.includes(family) ? COURSE.indexOf(family) : COURSE.length);

function grouped(cases) {
  const found = new Map();
  for (const one of cases) found.set(one.family, [...(found.get(one.family) ?? []), one]);
  return found;
}

/** Each case behind those of its family that it comes after. */
function ordered(cases) {
  const left = [...cases].sort((a, b) => Number(b.worked) - Number(a.worked) || levelOf(a) - levelOf(b) || a.title.localeCompare(b.title));
  const done = [];
  while (left.length) {
    const waits = ({id, after}) => after.some((before) => before !== id && left.some((one) => one.id === before));
    const next = left.findIndex((one) => !waits(one));
    done.push(...left.splice(Math.max(0, next), 1)); // two that wait for each other come as they stand
  }
  return done;
}

/** The case to be played next: the first in the order of the map that is not done; null where all are. */
export function nextCase(cases, isDone, but = null) {
  return families(cases).flatMap(({cases: all}) => all).find(({id}) => id !== but && !isDone(id)) ?? null;
}
