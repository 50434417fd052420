// The load as blocks of head, and the machine's answer, equally tall. No DOM.

import {linearScale, roundTop} from "../lib/scale.js";
import {spread} from "../lib/shape.js";

/** The order of the blocks, from the floor up. */
export const BLOCKS = ["lift", "vessel-pressure", "suction-line", "check-valve", "pipe", "fittings", "acceleration", "valve", "filter", "summit", "jet", "not-reached", "shared"];

/** Blocks less than this part of the sheet get no label of their own. */
const LABELLED = 0.001;
const LABELS = 122; // [px] longest name and value of a block
const ANSWERS = 69; // [px] the longer heading and a gap before it
const FOOT = 66; // [px] room below for the account of the answer

/** Of a stack: names of the blocks whose single heads nobody can know, such as two shut parts in a row. */
export const unknown = (stack) => stack.filter(({head}) => head === null).map(({block}) => block);

/** What the unknown blocks hold together, so that the whole stack is as high as the answer. [m] */
export const sharedHead = (stack, answer) => stack.reduce((rest, {head}) => rest - (head ?? 0), answer);

/**
 * Pile blocks up so that their top is their sum. What relieves the machine
 * (a negative block) goes down from zero first; what burdens it climbs from there.
 *
 * @param {{block: string, head: number|null}[]} stack
 * @param {number} [answer]  head of the machine, which tells what blocks of unknown head hold together: the block "shared"
 * @returns {{block: string, head: number, from: number, to: number}[]} in the order of BLOCKS [m]
 */
export function pile(stack, answer = 0) {
  const heads = new Map(stack.filter(({head}) => head !== null).map(({block, head}) => [block, head]));
  if (unknown(stack).length) heads.set("shared", sharedHead(stack, answer));
  const known = BLOCKS.filter((block) => heads.has(block)).map((block) => ({block, head: heads.get(block)}));
  let down = 0;
  const relief = known.filter(({head}) => head < 0).map((one) => ({...one, from: down, to: (down += one.head)}));
  let up = down;
  const burden = known.filter(({head}) => head >= 0).map((one) => ({...one, from: up, to: (up += one.head)}));
  return [...relief, ...burden];
}

const MOST = 5; // times what is asked that the axis may reach
const HALVED = 5; // times at most

/**
 * Ends of the axis of heads: everything fits, and it stays put while a control moves. A displacement pump could answer
 * far more than it is asked, which would leave no block to be read: then the axis is halved. [m]
 */
function headDomain(answers) {
  const tops = [1e-3], lows = [0];
  let could = 0;
  for (const answer of answers.filter(Boolean)) {
    const blocks = pile(answer.stack ?? [], answer.balance);
    const shutOff = (answer.curves?.station ?? []).filter(Number.isFinite);
    tops.push(answer.balance ?? 0, ...blocks.map(({to}) => to));
    could = Math.max(could, ...shutOff);
    lows.push(answer.balance ?? 0, ...blocks.map(({to}) => to));
  }
  const asked = Math.max(...tops);
  for (let i = 0; i < HALVED && could > MOST * asked && answers.some((answer) => answer?.displaces); i++) could /= 2;
  return roundTop(Math.min(...lows), Math.max(asked, could), 5);
}

/**
 * Places for a sheet of `width` × `height`, of which `foot` is left free below.
 * @param {object} now      {stack, balance, curves, displaces}: balance is the machine's answer [m]
 * @param {object|null} before  the same of the last committed answer
 * @param {(head: number) => boolean} [tells]  whether a head is more than nothing in the reader's digits
 */
export function stackGeometry(now, before, {width, height, foot = FOOT}, tells = () => true) {
  const domain = headDomain([now, before]);
  const y = linearScale(domain, [height - foot, 40]);
  const blocks = pile(now?.stack ?? [], now?.balance);
  const columns = columnsOf(width, blocks.some(({head}) => head < 0));
  const size = domain[1] - domain[0];
  const labelled = blocks.filter(({head}) => Math.abs(head) > LABELLED * size && tells(head));
  const middles = labelled.map(({from, to}) => (y(from) + y(to)) / 2);
  const places = spread(middles, 16, 40, height - foot - 6);
  return {
    y, domain, columns,
    blocks: blocks.map((one) => ({...one, top: y(Math.max(one.from, one.to)), height: Math.abs(y(one.from) - y(one.to))})),
    labels: labelled.map((one, i) => ({block: one.block, head: one.head, at: middles[i], y: places[i]})),
    answer: now ? bar(y, now.balance) : null,
    ghost: before && Math.abs(before.balance - (now?.balance ?? 0)) > 0.004 * size ? bar(y, before.balance) : null,
  };
}

/** Two columns; a load that also relieves has the relieving blocks beside the burdening ones. */
function columnsOf(width, relieves) {
  const bar = Math.min(90, Math.max(26, Math.round((width > 300 ? 0.22 : 0.13) * width)));
  const gap = Math.round(0.1 * bar) + 3;
  const right = width - 7 - Math.max(0, (width - LABELS - 2 * bar - gap - 14) / 2);
  const load = {x: right - 2 * bar - gap, width: bar};
  const side = relieves ? Math.round(0.36 * bar) : 0;
  return {
    machine: {x: right - bar, width: bar}, load,
    relief: {x: load.x, width: side}, burden: {x: load.x + side, width: bar - side},
    labels: load.x - 9,
  };
}

/** Where "asks" and "answers" end over their columns, never touching. [px] */
export function headings({load, machine}, width) {
  const answers = Math.min(machine.x + machine.width / 2 + 28, width - 5);
  return {asks: Math.min(load.x + load.width / 2 + 15, answers - ANSWERS), answers};
}

function bar(y, head) {
  return {top: y(Math.max(0, head)), bottom: y(Math.min(0, head)), height: Math.abs(y(0) - y(head)), end: y(head)};
}
