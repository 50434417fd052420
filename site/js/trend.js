// What the instruments showed while time ran. Bounded: when it is full, neighbours become one row that keeps
// their lowest and highest, so that no peak is lost. Pure.

const MOST = 4000; // rows
const MOST_EVENTS = 200;

/**
 * @typedef {object} Row
 * @property {number} from,time  plant time of its first and last reading [s]
 * @property {(number|null)[]} values  SI, in the order of the columns; a column that came later is missing
 * @property {(number|null)[]} low,high  the lowest and highest between `from` and `time`
 */

/** @param {number} [most] rows that are kept */
export function createTrend(most = MOST) {
  let columns = []; // {id, quantity, low, high}
  let rows = [];
  let events = []; // {kind, where, time}
  let pitch = 0; // [s] readings less far apart than that are one row
  let version = 0;

  function add(time, shown, happened = []) {
    for (const {id, quantity, low, high} of shown) {
      const column = columns.find((one) => one.id === id);
      if (!column) columns = [...columns, {id, quantity, low, high}];
      else if (column.low !== low || column.high !== high) columns = columns.map((one) => (one === column ? {...one, low, high} : one));
    }
    const values = columns.map(({id}) => shown.find((one) => one.id === id)?.value ?? null);
    const row = {from: time, time, values, low: values, high: values};
    const last = rows.at(-1);
    if (last && time - last.from < pitch) rows[rows.length - 1] = merged(last, row);
    else rows.push(row);
    if (happened.length) events = [...events, ...happened].slice(-MOST_EVENTS);
    if (rows.length > most) thin();
    version += 1;
  }

  function thin() {
    const span = rows.at(-1).time - rows[0].from;
    pitch = Math.max(2 * pitch, (2 * span) / most);
    rows = thinned(rows, pitch);
  }

  return {
    add,
    clear() {
      [columns, rows, events, pitch] = [[], [], [], 0];
      version += 1;
    },
    /** What was recorded; `version` tells one from the next. */
    get record() {
      return {columns, rows, events, version};
    },
    /** As much as a browser may keep: plain data of at most so many rows, six digits each. */
    kept(count = 800) {
      const few = rows.length > count ? thinned(rows, (1.01 * (rows.at(-1).time - rows[0].from)) / (count - 1)) : rows;
      const short = (list) => list.map((value) => (Number.isFinite(value) ? Number(value.toPrecision(6)) : null));
      return {columns, events, rows: few.map(({from, time, values, low, high}) => ({from, time, values: short(values), ...(low === values ? {} : {low: short(low), high: short(high)})}))};
    },
    /** Take over what was kept; what has not its shape is left out. */
    restore(kept) {
      if (!isRecord(kept)) return;
      columns = kept.columns.map(({id, quantity, low, high}) => ({id, quantity, low, high}));
      rows = kept.rows.map(({from, time, values, low = values, high = values}) => ({from, time, values, low, high})).slice(-most);
      events = kept.events.slice(-MOST_EVENTS);
      version += 1;
    },
  };
}

/** Neighbouring rows put together wherever they lie within a pitch. */
export function thinned(rows, pitch) {
  const found = [];
  for (const row of rows) {
    const last = found.at(-1);
    if (last && row.time - last.from < pitch) found[found.length - 1] = merged(last, row);
    else found.push(row);
  }
  return found;
}

function merged(a, b) {
  const of = (choose, one, other) => Array.from({length: Math.max(one.length, other.length)}, (_, n) => {
    const both = [one[n], other[n]].filter(Number.isFinite);
    return both.length ? choose(...both) : null;
  });
  return {from: a.from, time: b.time, values: b.values, low: of(Math.min, a.low, b.low), high: of(Math.max, a.high, b.high)};
}

const isList = (value, fits) => Array.isArray(value) && value.every(fits);
const isTexts = (...texts) => texts.every((text) => typeof text === "string" && text.length < 60);
const isValues = (list) => isList(list, (value) => value === null || Number.isFinite(value));

function isRecord(kept) {
  return isList(kept?.columns, (one) => isTexts(one?.id, one?.quantity) && [one.low, one.high].every(Number.isFinite))
    && isList(kept.events, (one) => isTexts(one?.kind, one?.where) && Number.isFinite(one.time))
    && isList(kept.rows, (row) => [row?.from, row?.time].every(Number.isFinite) && [row.values, row.low ?? [], row.high ?? []].every(isValues));
}
