// The choices in a part's panel: one of a few words, which pump, which liquid.
import {at} from "../state.js";
import {createChoice} from "./choice.js";
import {CONTROLS} from "./control-table.js";
import {byHand, holding, onto} from "./held.js";
import {liquidEdits, showsNow} from "./part-keys.js";
import {EQUAL, pumpChoice, pumpEdits} from "./pump-choice.js";
import {createSelect} from "./select.js";

const AT_HAND = CONTROLS.find(({key}) => key === "pump.model");
const MANY = 3; // words beside each other; more of them lie in a list
const OF_INSTRUMENTS = /^(gauges|meters)\./; // what is right with them stands before what is not
const OTHER = "other"; // any liquid but water, until it has a name

/** A choice between the words that the engine knows. */
export function choice(about, {choices, default: usual}, kit) {
  const options = CONTROLS.find(({key}) => key === about.key)?.options({pumps: []}) ?? (OF_INSTRUMENTS.test(about.key) ? usualFirst(choices, usual) : choices); // in the tray's order
  return oneOf(about, kit, ({plant}) => ({value: at(plant, about.key), options}), undefined, OF_INSTRUMENTS.test(about.key) && options.length > MANY ? createSelect : createChoice);
}

/** What is usual stands first. */
export const usualFirst = (choices, usual) => [usual, ...choices.filter((each) => each !== usual)];

/** A gauge that is shut off keeps what it shows at that moment. */
export function rootValve(about, {choices}, kit) {
  const [, place] = about.key.split(".");
  const frozen = about.key.replace("root_valve", "frozen_bar");
  let model = null;
  const part = oneOf(about, kit, ({plant}) => ({value: at(plant, about.key), options: choices}), (edits) => (
    {...edits, [frozen]: edits[about.key] === "shut" ? showsNow(place, model) : null}
  ));
  return {
    ...part,
    also: [frozen],
    update(next) {
      model = next;
      part.update(next);
    },
  };
}

/** One of a few words; `edits` may turn what was chosen into something else. */
function oneOf(about, kit, of, edits = (all) => all, create = createChoice) {
  const send = (action) => action.type === "commit" && kit.send({...action, edits: edits(action.edits)});
  const part = create(about, {...kit, send});
  return {...part, update: (model) => part.update(of(model))};
}

/** Those of the tray first. */
const pumpIds = (catalogue) => [...new Set([...AT_HAND.options(catalogue), ...catalogue.pumps.map(({id}) => id)])];

const GROUPS = [["radial", ["radial"]], ["along", ["mixed", "axial"]], ["displacement", ["gear", "lobe", "screw"]]];

/** The catalogue's pumps by their kind. */
function inGroups(choice, {pumps}, words) {
  const kindOf = (id) => pumps.find((pump) => pump.id === id)?.kind;
  const groups = GROUPS.map(([name, kinds]) => [words(`pump-group-${name}`), choice.options.filter((id) => kinds.includes(kindOf(id)))]);
  return {...choice, groups};
}

/** The first pump: any of the catalogue, or that of the plant's own file. */
export const pump = (about, limit, kit) => oneOf(about, kit, ({plant, own, catalogue}) => inGroups(pumpChoice(at(plant, "pump.model"), own, pumpIds(catalogue)), catalogue, kit.words), pumpEdits, createSelect);

/** The second pump: as the first, or any of the catalogue. */
export const secondPump = (about, limit, kit) => oneOf({...about, says: "pump-model"}, kit, ({plant, catalogue}) => (
  inGroups({value: at(plant, "pump.second.model") ?? EQUAL, options: [EQUAL, ...pumpIds(catalogue)]}, catalogue, kit.words)
), pumpEdits, createSelect);

/** What a controller measures, what it moves, and whether it does: each change leaves everything where it stands. */
const controlled = (edits) => (about, {choices}, kit) => {
  let model = null;
  const part = oneOf(about, kit, ({plant}) => ({value: at(plant, about.key), options: choices}), (all) => edits(all[about.key], model), choices.length > 3 ? createSelect : createChoice);
  return {...part, update: (next) => part.update((model = next))};
};

export const controlMode = controlled((mode, model) => (mode === "manual" ? byHand(model) : {"control.mode": mode}));
export const controlOn = controlled(onto);
export const controlOf = controlled(holding);

/** Water, or another liquid with properties of its own, which begins as the present one is. */
export function liquid(about, limit, kit) {
  let model = null;
  const other = () => kit.words("choice-liquid-name-other");
  const part = oneOf(about, kit, ({plant, edits}) => {
    const name = edits["liquid.name"] ?? plant.liquid.name; // what was chosen stands before the answer comes
    return {value: name === other() ? OTHER : name, options: ["water", ...new Set([name === "water" || name === other() ? OTHER : name])]};
  }, (edits) => liquidEdits(edits["liquid.name"] === OTHER ? other() : edits["liquid.name"], model));
  return {
    ...part,
    also: ["liquid.density_kgm3", "liquid.viscosity_mpas", "liquid.vapour_bar", "liquid.critical_bar"],
    update(next) {
      model = next;
      part.update(next);
    },
  };
}
