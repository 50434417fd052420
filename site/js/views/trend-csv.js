// The record as a table that other programs open: RFC 4180, a point for the decimals, the unit in each heading. No DOM.

import {isoTime} from "./plant-time.js";

const DIGITS = 7;

const cell = (text) => (/[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);

/**
 * @param {object} record of trend.js
 * @param {object} p
 * @param {object} p.units the reader's
 * @param {(id: string) => string} p.name of an instrument
 * @param {{time: string, iso: string, low: (name: string) => string, high: (name: string) => string}} p.headings
 * @returns {string} a row for each reading; where several became one, also the lowest and highest of each instrument
 */
export function csvOf({columns, rows}, {units, name, headings}) {
  const merged = rows.some(({low, values}) => low !== values);
  const unit = (quantity) => ` [${units.symbol(quantity)}]`;
  const heads = columns.flatMap(({id, quantity}) => {
    const one = name(id);
    return (merged ? [one, headings.low(one), headings.high(one)] : [one]).map((text) => text + unit(quantity));
  });
  const lines = rows.map(({time, values, low, high}) => [
    digits(time), isoTime(time),
    ...columns.flatMap(({quantity}, n) => (merged ? [values[n], low[n], high[n]] : [values[n]]).map((value) => number(value, quantity, units))),
  ]);
  return [[headings.time, headings.iso, ...heads], ...lines].map((line) => `${line.map(cell).join(",")}\r\n`).join("");
}

const number = (value, quantity, units) => (Number.isFinite(value) ? digits(units.value(quantity, value)) : "");

const digits = (value) => String(Number(value.toPrecision(DIGITS)));
