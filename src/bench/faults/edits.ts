import type { ContactPairs } from "../../wiring/contacts.ts";
import type { MeterModel } from "../meter/meter-model.ts";

/** One change that a fault makes. Lugs are indexes in the build's table, wires in its list, parts by name. */
export type Edit =
  /** The wire is missing, or open at either end. */
  | { readonly edit: "cut"; readonly wire: number }
  /** One end of a wire sits on another lug. */
  | { readonly edit: "move"; readonly wire: number; readonly end: "from" | "to"; readonly lug: number }
  /** The lug's joint is open: its wires still hold together, off the lug. */
  | { readonly edit: "lift"; readonly lug: number }
  /** Two lugs touch. */
  | { readonly edit: "bridge"; readonly lugs: readonly [number, number] }
  /** A switch contact never meets this lug. */
  | { readonly edit: "dead-contact"; readonly control: number; readonly lug: number }
  | { readonly edit: "coil-open"; readonly part: string; readonly coil: string }
  | { readonly edit: "coil-shorted"; readonly part: string; readonly coil: string }
  /** A winding of another resistance. */
  | { readonly edit: "coil-resistance"; readonly part: string; readonly coil: string; readonly factor: number }
  /** A track or resistor of another value. */
  | { readonly edit: "resistance"; readonly part: string; readonly gang: number; readonly factor: number }
  /** A capacitor of another value; 0 is an open one. */
  | { readonly edit: "capacitance"; readonly part: string; readonly factor: number };

class ModelEditor {
  readonly #model: MeterModel;
  readonly #wireFrom: Int32Array;
  readonly #wireTo: Int32Array;
  readonly #bridges: (readonly [number, number])[];
  #contacts: readonly ContactPairs[];
  #ohms: Float64Array;
  #spare: number;

  constructor(model: MeterModel) {
    this.#model = model;
    this.#wireFrom = model.wireFrom.slice();
    this.#wireTo = model.wireTo.slice();
    this.#bridges = [...model.bridges];
    this.#contacts = model.contacts;
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
        break;
    }
  }

  result(): MeterModel {
    return {
      ...this.#model,
      wireFrom: this.#wireFrom,
      wireTo: this.#wireTo,
      bridges: this.#bridges,
      contacts: this.#contacts,
      ohms: this.#ohms,
    };
  }

  #lift(lug: number): void {
    const hangsOn = this.#spare++;
    for (const ends of [this.#wireFrom, this.#wireTo]) {
      for (let wire = 0; wire < ends.length; wire++) if (ends[wire] === lug) ends[wire] = hangsOn;
    }
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
