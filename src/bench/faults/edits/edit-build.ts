import { LugTable, switchControls } from "../../../build-file/lugs.ts";
import type { Build, Coil, Part, Wire } from "../../../build-file/schema.ts";
import type { SwitchTable } from "../../../build-file/switch-types.ts";
import type { Edit } from "./edit-model.ts";

/** Stray capacitance across a break in a coil: an assumption, from memory. */
export const BREAK_FARADS = 50e-12;
/** What is left of a shorted coil: the format has no coil without resistance and inductance. */
const SHORTED_COIL = { resistance: 1e-3, inductance: 1e-9, capacitance: 0, output: 0 };
/** A coil through which nothing flows and that takes up nothing. */
const DEAD_COIL = { resistance: 1e12, inductance: 1, capacitance: 0, output: 0 };
const OPEN_CAP_FARADS = 1e-18;

function directions({ winding, magnet }: Coil): Pick<Coil, "winding" | "magnet"> {
  return { winding, magnet };
}

type Parts = Record<string, Part>;

class BuildEditor {
  readonly #build: Build;
  readonly #table: LugTable;
  readonly #parts: Parts;
  readonly #wires: (Wire | undefined)[];
  #added = 0;

  constructor(build: Build) {
    this.#build = build;
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
        this.#shortCoil(change.part, change.coil);
        break;
      case "coil-resistance":
        this.#scaleCoil(change.part, change.coil, change.factor);
        break;
      case "resistance":
        this.#scaleResistance(change.part, change.gang, change.factor);
        break;
      case "capacitance":
        this.#scaleCapacitance(change.part, change.factor);
        break;
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

  /** The lug's wires go to a terminal of their own. */
  #lift(lug: number): void {
    const terminal = this.#newName();
    this.#parts[terminal] = { kind: "terminal" };
    for (const [index, wire] of this.#wires.entries()) {
      for (const end of ["from", "to"] as const) {
        if (wire && this.#table.find(wire[end]) === lug) this.#moveEnd(index, end, terminal);
      }
    }
  }

  #killContact(control: number, lug: number): void {
    const { part, table, onShaft } = switchControls(this.#build.parts)[control]!;
    const prefix = onShaft ? `${part}.s.` : `${part}.`;
    const dead = this.#table.nameAt(lug).slice(prefix.length);
    const positions: SwitchTable["positions"] = table.positions.map((groups) => [
      ...groups.map((group) => group.filter((name) => name !== dead)).filter((group) => group.length > 0),
      ...table.lugs.map((name) => [name]),
    ]);
    const spec = { positions: positions.map((groups) => groups.map((group) => [...group])) };
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
    const [start, finish] = isWhole ? ["ground", "hot"] : [`${coil}.start`, `${coil}.finish`];
    const [standIn, gap] = [this.#newName(), this.#newName()];
    this.#parts[standIn] = { ...(isWhole ? old : uncoupled), coils: broken };
    this.#parts[gap] = { kind: "cap", capacitance: BREAK_FARADS };
    const dead = Object.keys(broken).map((name) => [name, { ...DEAD_COIL, ...directions(old.coils[name]!) }]);
    this.#parts[part] = { ...uncoupled, coils: { ...old.coils, ...Object.fromEntries(dead) } };
    this.#wires.push(
      { from: `${part}.${start}`, to: `${standIn}.${isWhole ? "ground" : `${coil}.start`}` },
      { from: `${standIn}.${isWhole ? "hot" : `${coil}.finish`}`, to: `${gap}.a` },
      { from: `${gap}.b`, to: `${part}.${finish}` },
    );
  }

  #shortCoil(part: string, coil: string): void {
    const old = this.#parts[part]!;
    if (old.kind !== "pickup") return;
    const { coupling: _, ...pickup } = old;
    const { loss: __, ...spec } = old.coils[coil]!;
    this.#parts[part] = { ...pickup, coils: { ...old.coils, [coil]: { ...spec, ...SHORTED_COIL } } };
  }

  /** Only the resistance: it tells nothing sure about the winding's inductance. */
  #scaleCoil(part: string, coil: string, factor: number): void {
    const old = this.#parts[part]!;
    if (old.kind !== "pickup") return;
    const spec = old.coils[coil]!;
    this.#parts[part] = { ...old, coils: { ...old.coils, [coil]: { ...spec, resistance: spec.resistance * factor } } };
  }

  #scaleResistance(part: string, gang: number, factor: number): void {
    const old = this.#parts[part]!;
    if (old.kind === "resistor") this.#parts[part] = { ...old, resistance: old.resistance * factor };
    if (old.kind !== "pot") return;
    const scaled = <Track extends { resistance: number; measured?: number | undefined }>(track: Track): Track => {
      const { measured, ...rest } = track;
      return { ...rest, resistance: (measured ?? track.resistance) * factor } as Track;
    };
    if (gang === 0) this.#parts[part] = scaled(old);
    else this.#parts[part] = { ...old, gangs: old.gangs?.map(scaled) };
  }

  #scaleCapacitance(part: string, factor: number): void {
    const old = this.#parts[part]!;
    if (old.kind !== "cap") return;
    this.#parts[part] = { ...old, capacitance: Math.max(OPEN_CAP_FARADS, old.capacitance * factor) };
  }
}

/**
 * The build with a fault's changes made, for what only alternating current shows. It is a build to compute with, not one
 * that the door would let in.
 */
export function editBuild(build: Build, edits: readonly Edit[]): Build {
  const editor = new BuildEditor(build);
  for (const change of edits) editor.apply(change);
  return editor.result();
}
