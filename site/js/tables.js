// What counts as a table among plain data: in a plant, in a link.

/** Whether a value holds further keys. */
export const isTable = (value) => value !== null && typeof value === "object" && !Array.isArray(value);
