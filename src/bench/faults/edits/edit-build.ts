import { contactLug, localCoilLeads } from "../../../build-file/lug-names.ts";
import { LugTable, switchControls } from "../../../build-file/lugs.ts";
import type { Build, Part, PartOf, Wire } from "../../../build-file/schema.ts";
import type { SwitchTable } from "../../../build-file/switch-types.ts";
import type { Edit } from "./edit.ts";
import {
  deadCoil,
  withCapacitance,
  withCoilResistance,
  withResistance,
  withShortedCoil,
  withTaper,
} from "./faulty-parts.ts";

/** Stray capacitance across a break in a coil: an assumption, from memory. */
const BREAK_FARADS = 50e-12;
/** The format has no capacitor without capacitance. */
const NO_FARADS = 1e-18;

/** What a fault leaves open of how it sounds. */
export interface EditOptions {
  readonly breakFarads?: number;
}

type Parts = Record<string, Part>;

/** Edits a copy of the build file. */
class BuildEditor {
  readonly #build: Build;
  readonly #table: LugTable;
  readonly #parts: Parts;
  readonly #wires: (Wire | undefined)[];
  readonly #breakFarads: number;
  readonly standIns = new Map<string, string>();
  #added = 0;

  constructor(build: Build, { breakFarads = BREAK_FARADS }: EditOptions) {
    this.#build = build;
    this.#breakFarads = Math.max(NO_FARADS, breakFarads);
    this.#table = new LugTable(build.parts);
    this.#parts = { ...build.parts };
    this.#wires = [...build.wires];
  }

  apply(change: Edit): void {
    switch (change.edit) {
      case "cut":
        this.#wires[change.wire] = undefined;
        break;
      case "move":
        this.#moveEnd(change.wire, change.end, this.#table.nameAt(change.lug));
        break;
      case "lift":
        this.#lift(change.lug);
        break;
      case "resist-wire":
        this.#resistWire(change.wire, change.ohms);
        break;
      case "resist-lug":
        this.#resistor(this.#table.nameAt(change.lug), this.#lift(change.lug), change.ohms);
        break;
      case "bridge":
        this.#wires.push({ from: this.#table.nameAt(change.lugs[0]), to: this.#table.nameAt(change.lugs[1]) });
        break;
      case "dead-contact":
        this.#killContact(change.control, change.lug);
        break;
      case "coil-open":
        this.#breakCoil(change.part, change.coil);
        break;
      case "coil-shorted":
        this.#change(change.part, "pickup", (pickup) => withShortedCoil(pickup, change.coil));
        break;
      case "coil-resistance":
        this.#change(change.part, "pickup", (pickup) => withCoilResistance(pickup, change.coil, change.factor));
        break;
      case "resistance":
        this.#parts[change.part] = withResistance(this.#parts[change.part]!, change.gang, change.factor);
        break;
      case "capacitance":
        this.#change(change.part, "cap", (cap) => withCapacitance(cap, change.factor));
        break;
      case "taper":
        this.#change(change.part, "pot", (pot) => withTaper(pot, change.taper));
        break;
      case "positions":
        this.#reorder(change.control, change.order);
        break;
      default:
        change satisfies never;
    }
  }

  result(): Build {
    return { ...this.#build, parts: this.#parts, wires: this.#wires.filter((wire) => wire !== undefined) };
  }

  #newName(): string {
    let name: string;
    do name = `fault${this.#added++}`;
    while (name in this.#parts);
    return name;
  }

  #moveEnd(index: number, end: "from" | "to", lug: string): void {
    const wire = this.#wires[index];
    if (wire) this.#wires[index] = { ...wire, [end]: lug };
  }

  #resistor(from: string, to: string, ohms: number): void {
    const name = this.#newName();
    this.#parts[name] = { kind: "resistor", resistance: ohms };
    this.#wires.push({ from, to: `${name}.a` }, { from: `${name}.b`, to });
  }

  #resistWire(index: number, ohms: number): void {
    const wire = this.#wires[index];
    if (!wire) return;
    this.#wires[index] = undefined;
    this.#resistor(wire.from, wire.to, ohms);
  }

  /** The lug's wires go to a terminal of their own, whose name is returned. */
  #lift(lug: number): string {
    const terminal = this.#newName();
    this.#parts[terminal] = { kind: "terminal" };
    for (const [index, wire] of this.#wires.entries()) {
      for (const end of ["from", "to"] as const) {
        if (wire && this.#table.find(wire[end]) === lug) this.#moveEnd(index, end, terminal);
      }
    }
    return terminal;
  }

  #killContact(control: number, lug: number): void {
    const { name: called, part, table } = switchControls(this.#parts)[control]!;
    const dead = table.lugs.find((local) => this.#table.find(contactLug(called, local)) === lug);
    const positions = table.positions.map((groups) =>
      groups.map((group) => group.filter((name) => name !== dead)).filter((group) => group.length > 0),
    );
    this.#setContacts(part, table.lugs, positions);
  }

  #reorder(control: number, order: readonly number[]): void {
    const { part, table } = switchControls(this.#parts)[control]!;
    this.#setContacts(
      part,
      table.lugs,
      order.map((number) => table.positions[number - 1]!),
    );
  }

  /** Every lug is named in every position, for a contact table of its own has no others. */
  #setContacts(part: string, lugs: SwitchTable["lugs"], positions: SwitchTable["positions"]): void {
    const spec = {
      positions: positions.map((groups) => [...groups.map((group) => [...group]), ...lugs.map((name) => [name])]),
    };
    const old = this.#parts[part]!;
    if (old.kind === "pot") this.#parts[part] = { ...old, drives: spec };
    else if (old.kind === "switch") this.#parts[part] = { kind: "switch", ...spec };
  }

  /**
   * A break inside the pickup, between its coil and its finish. The format draws no such thing, so a stand-in behind a stray
   * capacitance takes over what is broken, and the pickup's own coil, or both where one pair of leads serves them, goes dead.
   */
  #breakCoil(part: string, coil: string): void {
    const old = this.#parts[part]!;
    if (old.kind !== "pickup") return;
    const { coupling, ...uncoupled } = old;
    const isWhole = this.#table.find(`${part}.hot`) !== undefined;
    const broken = isWhole ? old.coils : { [coil]: old.coils[coil]! };
    const [start, finish] = isWhole ? (["ground", "hot"] as const) : localCoilLeads(coil);
    const [standIn, gap] = [this.#newName(), this.#newName()];
    this.standIns.set(standIn, part);
    this.#parts[standIn] = { ...(isWhole ? old : uncoupled), coils: broken };
    this.#parts[gap] = { kind: "cap", capacitance: this.#breakFarads };
    const dead = Object.keys(broken).map((name) => [name, deadCoil(old.coils[name]!)]);
    this.#parts[part] = { ...uncoupled, coils: { ...old.coils, ...Object.fromEntries(dead) } };
    this.#wires.push(
      { from: `${part}.${start}`, to: `${standIn}.${start}` },
      { from: `${standIn}.${finish}`, to: `${gap}.a` },
      { from: `${gap}.b`, to: `${part}.${finish}` },
    );
  }

  #change<Kind extends Part["kind"]>(name: string, kind: Kind, change: (part: PartOf<Kind>) => Part): void {
    const part = this.#parts[name]!;
    if (part.kind === kind) this.#parts[name] = change(part as PartOf<Kind>);
  }
}

/** A build with a fault's changes made. */
export interface Edited {
  readonly build: Build;
  /** Pickups that the edits bring in for one that is broken inside: by the new one's name, the old one's. */
  readonly standIns: ReadonlyMap<string, string>;
}

/** The same as `editBuild`, and which of its pickups stands in for which. */
export function edited(build: Build, edits: readonly Edit[], options: EditOptions = {}): Edited {
  const editor = new BuildEditor(build, options);
  for (const change of edits) editor.apply(change);
  return { build: editor.result(), standIns: editor.standIns };
}

/**
 * The build with a fault's changes made, for what only alternating current shows. It is a build to compute with, not one
 * that the door would let in.
 */
export function editBuild(build: Build, edits: readonly Edit[], options: EditOptions = {}): Build {
  return edited(build, edits, options).build;
}
