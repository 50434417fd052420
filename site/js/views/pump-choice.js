// Which pumps are offered for a place, and what choosing one changes. No DOM.

export const OWN = "own"; // the pump that stands in the plant's own file
export const EQUAL = "equal"; // the second pump is as the first

/**
 * Value and options of the first pump's choice; a plant with a pump of its own offers it beside the catalogue's.
 *
 * @param {string|undefined} value pump.model of the plant
 * @param {boolean} own whether the plant's file holds a pump
 * @param {string[]} ids of the pumps offered; one that stands there is offered too
 */
export function pumpChoice(value, own, ids) {
  const current = value ?? OWN;
  const offered = own || !ids.includes(current) ? [...new Set([own ? OWN : current, ...ids])] : ids;
  return {value: current, options: offered};
}

/** "own" goes back to the pump in the file, "equal" to a second one as the first: edits that are left out. */
export function pumpEdits(edits) {
  const plain = ([key, value]) => [key, value === OWN ? undefined : value === EQUAL ? null : value];
  return Object.fromEntries(Object.entries(edits).map(plain));
}
