// What pumps and check valves show for a state.

import {conditionOf} from "./fitted.js";
import {flowBehind, noted} from "./aside-update.js";

const BOILS = ["bubbles", "npsh-short"]; // notes of which the bubbles at a pump's inlet speak
const BOILS_BEFORE = ["suction-boils", "suction-dry"]; // those of which they speak at every pump

export function updateMachines({pumps, checks}, {kinds}, model, words) {
  const {answer, plant, turning} = model;
  const machines = answer?.state?.machines ?? [];
  pumps.forEach((pump, i) => {
    const machine = machines[i];
    const condition = conditionOf(plant, i);
    const boiling = BOILS.some((kind) => noted(answer, kind, `pump-${i + 1}`)) || BOILS_BEFORE.some((kind) => noted(answer, kind));
    const standing = Boolean(machine) && (machine.standing ?? !machine.speed);
    pump.update({speed: machine?.speed ?? 0, turns: turning, condition, boiling, standing, drive: driveOf(plant, machine),
      says: pumpSays(machine, {...condition, boiling, standing}, model, words, kinds[i])});
  });
  Object.values(checks).forEach((check, i) => updateCheck(check, machines[i], model, words, pumps.length));
}

/** What turns a pump: its belt, and whether its relay trips. */
const driveOf = ({drive: {belt = "none", belt_ratio: ratio}}, machine) => ({
  fitted: belt !== "none", ratio, slips: machine?.belt?.slips === true, trips: machine?.relay?.trips === true,
});

/** Speed, and what else there is to say of a pump. */
function pumpSays(machine, {worn, trim, blocked, wrong, boiling, standing}, {units}, words, kind) {
  if (!machine) return words("draw-no-reading");
  const speed = units.full("speed", Math.abs(machine.speed));
  const driven = machine.speed < 0 ? "draw-pump-driven-back" : machine.speed ? "draw-pump-driven" : "draw-pump-standing";
  const state = `${words(`draw-kind-${kind}`)}. ${words(standing ? driven : "draw-pump-state", {speed})}`;
  const also = [
    machine.belt && words(machine.belt.slips ? "draw-pump-slipping" : "draw-pump-belted", {speed: units.full("speed", machine.motor_speed ?? 0)}),
    machine.relay?.trips && words("draw-pump-tripped"),
    wrong && words("draw-pump-wrong"), boiling && words("draw-pump-boiling"),
    worn > 0 && words("draw-pump-worn", {share: units.full("efficiency", worn)}),
    trim !== 1 && words("draw-pump-trimmed", {share: units.full("opening", trim)}),
    blocked > 0 && words("draw-pump-blocked", {share: units.full("opening", blocked)}),
  ].filter(Boolean);
  return also.reduce((said, more) => words("draw-pump-also", {state: said, more}), state);
}

function updateCheck(check, machine, {answer, plant}, words, pumps) {
  const open = throughCheck(machine, answer, pumps) > 0;
  const {stuck_open: stuck = false, leak_kv_m3h: leak = 0} = plant.check;
  const passing = leak > 0;
  const state = stuck ? "stuck" : open ? "open" : passing ? "passing" : "shut";
  check.update({open, stuck, passing, off: !plant.discharge.attached && pumps === 1, says: words(machine ? `draw-check-${state}` : "draw-no-reading")});
}

/** What goes through a check valve; that of a single pump stands behind the lines back to the supply. */
function throughCheck(machine, answer, pumps) {
  if (!machine) return 0;
  return pumps > 1 ? machine.flow : flowBehind(answer);
}
