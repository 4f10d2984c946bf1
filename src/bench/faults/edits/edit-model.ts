import type { ContactPairs } from "../../../wiring/contacts.ts";
import type { MeterModel } from "../../meter/meter-model.ts";
import type { DcParts } from "../../meter/resistors.ts";
import type { Edit } from "./edit.ts";
import { spareJointOf } from "./spare-joint.ts";

/** Edits a copy of what the ohmmeter sees. */
class ModelEditor {
  readonly #model: MeterModel;
  readonly #wireFrom: Int32Array;
  readonly #wireTo: Int32Array;
  readonly #bridges: (readonly [number, number])[];
  #contacts: readonly ContactPairs[];
  #parts: DcParts;
  #ohms: Float64Array;
  #spare: number;

  constructor(model: MeterModel) {
    this.#model = model;
    this.#wireFrom = model.wireFrom.slice();
    this.#wireTo = model.wireTo.slice();
    this.#bridges = [...model.bridges];
    this.#contacts = model.contacts;
    this.#parts = model.parts;
    this.#ohms = model.ohms;
    this.#spare = model.firstSpareNode;
  }

  apply(change: Edit): void {
    switch (change.edit) {
      case "cut":
        this.#wireFrom[change.wire] = -1;
        break;
      case "move":
        (change.end === "from" ? this.#wireFrom : this.#wireTo)[change.wire] = change.lug;
        break;
      case "lift":
        this.#lift(change.lug);
        break;
      case "resist-wire":
        this.#resist(this.#wireFrom[change.wire]!, this.#wireTo[change.wire]!, change.ohms);
        this.#wireFrom[change.wire] = -1;
        break;
      case "resist-lug":
        this.#resist(change.lug, this.#lift(change.lug), change.ohms);
        break;
      case "bridge":
        this.#bridges.push(change.lugs);
        break;
      case "dead-contact":
        this.#killContact(change.control, change.lug);
        break;
      case "coil-open":
        this.#scale(change.part, Number.POSITIVE_INFINITY, (parameter) => parameter.coil === change.coil);
        break;
      case "coil-shorted":
        this.#scale(change.part, 0, (parameter) => parameter.coil === change.coil);
        break;
      case "coil-resistance":
        this.#scale(change.part, change.factor, (parameter) => parameter.coil === change.coil);
        break;
      case "resistance":
        this.#scale(change.part, change.factor, (parameter) => (parameter.gang ?? 0) === change.gang);
        break;
      case "capacitance":
        // No direct current flows through one, whatever its value.
        break;
      case "taper":
        // A meter's states hold where the drawing's wipers stand; at either end of a track they stand there with any taper.
        break;
      case "positions":
        this.#contacts = this.#contacts.map((positions, index) =>
          index === change.control ? change.order.map((number) => positions[number - 1]!) : positions,
        );
        break;
      default:
        change satisfies never;
    }
  }

  result(): MeterModel {
    return {
      ...this.#model,
      parts: this.#parts,
      wireFrom: this.#wireFrom,
      wireTo: this.#wireTo,
      bridges: this.#bridges,
      contacts: this.#contacts,
      ohms: this.#ohms,
    };
  }

  /** @returns the node that the lug's wires now hang on */
  #lift(lug: number): number {
    const hangsOn = this.#spare++;
    for (const ends of [this.#wireFrom, this.#wireTo]) {
      for (let wire = 0; wire < ends.length; wire++) if (ends[wire] === lug) ends[wire] = hangsOn;
    }
    return hangsOn;
  }

  /** A resistance between two nodes, in the one place that the model keeps for it. */
  #resist(a: number, b: number, ohms: number): void {
    if (a < 0) return;
    const spare = spareJointOf(this.#parts);
    this.#parts = {
      ...this.#parts,
      resistors: this.#parts.resistors.map((each, index) => (index === spare ? { ...each, a, b } : each)),
    };
    this.#ohms = this.#ohms.map((value, index) => (index === spare ? ohms : value));
  }

  #killContact(control: number, lug: number): void {
    this.#contacts = this.#contacts.map((positions, index) =>
      index === control ? positions.map((pairs) => withoutLug(pairs, lug)) : positions,
    );
  }

  #scale(part: string, factor: number, concerns: (parameter: { coil?: string; gang?: number }) => boolean): void {
    const { resistors, parameters } = this.#model.parts;
    this.#ohms = this.#ohms.map((value, index) => {
      const parameter = parameters[resistors[index]!.parameter]!;
      return parameter.part === part && concerns(parameter) ? value * factor : value;
    });
  }
}

type Pairs = readonly (readonly [number, number])[];

/** The contacts left when one lug is no longer met: the others of its group stay joined to each other. */
function withoutLug(pairs: Pairs, lug: number): Pairs {
  const others = pairs.filter(([a, b]) => a !== lug && b !== lug);
  // Every pair of a group begins with the group's first lug; where that one is dead the rest must be tied anew.
  const tied = pairs.filter(([first]) => first === lug).map(([, other]) => other);
  return [...others, ...tied.slice(1).map((other): [number, number] => [tied[0]!, other])];
}

/** The model with a fault's changes made. */
export function editModel(model: MeterModel, edits: readonly Edit[]): MeterModel {
  if (edits.length === 0) return model;
  const editor = new ModelEditor(model);
  for (const change of edits) editor.apply(change);
  return editor.result();
}
