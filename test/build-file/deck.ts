import type { Build } from "../../src/build-file/schema.ts";
import { wiperShare } from "../../src/build-file/taper.ts";
import { behindMetal } from "../ngspice.ts";
import { groupsIn } from "./contact-tables.ts";

/**
 * An ngspice netlist drawn straight from a long form's lugs and wires, apart from the program's own nets and elements: it
 * joins lugs by its own flood fill, with the hand-written contact tables.
 */

type PickupPart = Extract<Build["parts"][string], { kind: "pickup" }>;

/** Dials 0–10 by pot, positions from 1 by switch (`<pot>.s` for one on a shaft); those left out stand at 10 and 1. */
export type DeckSettings = Readonly<Record<string, number>>;

class Joints {
  readonly #neighbours = new Map<string, string[]>();

  join(a: string, b: string): void {
    this.#neighbours.set(a, [...(this.#neighbours.get(a) ?? []), b]);
    this.#neighbours.set(b, [...(this.#neighbours.get(b) ?? []), a]);
  }

  /** Every lug that a lug is joined to, itself too. */
  around(lug: string): Set<string> {
    const found = new Set([lug]);
    const waiting = [lug];
    for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
      for (const other of this.#neighbours.get(next) ?? []) {
        if (found.has(other)) continue;
        found.add(other);
        waiting.push(other);
      }
    }
    return found;
  }
}

function joinContacts(joints: Joints, type: string, position: number, prefix: string): void {
  for (const group of groupsIn(type, position))
    for (const lug of group.slice(1)) joints.join(prefix + group[0], prefix + lug);
}

function coilCards(id: string, start: string, finish: string, coil: PickupPart["coils"][string]): string[] {
  const reversed = (coil.winding === "reverse") !== (coil.magnet === "south");
  const cards = [
    ...behindMetal(`V${id} ${id}_e ${start} DC 0 AC ${(reversed ? -1 : 1) * coil.output}`, coil.shielding),
    `R${id} ${id}_e ${id}_r ${coil.resistance}`,
  ];
  if (coil.capacitance > 0) cards.push(`C${id} ${start} ${finish} ${coil.capacitance}`);
  if (!Array.isArray(coil.loss)) {
    cards.push(`L${id} ${id}_r ${finish} ${coil.inductance}`);
    if (coil.loss !== undefined) cards.push(`Rl${id} ${id}_r ${finish} ${coil.loss}`);
    return cards;
  }
  cards.push(`L${id} ${id}_r ${id}_s0 ${coil.inductance}`);
  const sections = coil.loss.filter(({ inductance }) => inductance !== undefined);
  for (const [i, { resistance }] of coil.loss.filter(({ inductance }) => inductance === undefined).entries())
    cards.push(`Ra${id}${i} ${id}_r ${finish} ${resistance}`);
  for (const [i, section] of sections.entries()) {
    const to = i === sections.length - 1 ? finish : `${id}_s${i + 1}`;
    cards.push(
      `L${id}s${i} ${id}_s${i} ${to} ${section.inductance}`,
      `R${id}s${i} ${id}_s${i} ${to} ${section.resistance}`,
    );
  }
  return cards;
}

function pickupCards(name: string, pickup: PickupPart, node: (lug: string) => string): string[] {
  const coils = Object.entries(pickup.coils);
  const id = (coil: string) => `${name}_${coil}`.toLowerCase();
  if (coils.length === 1) return coilCards(id("one"), node(`${name}.ground`), node(`${name}.hot`), coils[0]![1]);
  const [[nameA, a], [nameB, b]] = coils as [(typeof coils)[0], (typeof coils)[0]];
  const inside = `${name}_inside`;
  const alike = a.winding === b.winding;
  const ends =
    pickup.conductors === 2
      ? [node(`${name}.ground`), inside, ...(alike ? [node(`${name}.hot`), inside] : [inside, node(`${name}.hot`)])]
      : [nameA, nameB].flatMap((coil) => [node(`${name}.${coil}.start`), node(`${name}.${coil}.finish`)]);
  const cards = [...coilCards(id(nameA), ends[0]!, ends[1]!, a), ...coilCards(id(nameB), ends[2]!, ends[3]!, b)];
  if (!pickup.coupling) return cards;
  const opposed = (a.winding === b.winding) !== (a.magnet === b.magnet);
  return [...cards, `K${name} L${id(nameA)} L${id(nameB)} ${opposed ? -pickup.coupling : pickup.coupling}`];
}

/** Cards of a build in one setting; the node `out` is the jack's tip. */
export function deckOf(build: Build, settings: DeckSettings): string[] {
  const joints = new Joints();
  for (const { from, to } of build.wires) joints.join(from, to);
  for (const [name, part] of Object.entries(build.parts)) {
    if (part.kind === "switch") joinContacts(joints, part.type!, settings[name] ?? 1, `${name}.`);
    if (part.kind !== "pot") continue;
    if (part.drives) joinContacts(joints, part.drives.type!, settings[`${name}.s`] ?? 1, `${name}.s.`);
    const dial = settings[name] ?? 10;
    if (dial === 10 && part.noLoad) joints.join(`${name}.2`, `${name}.3`);
  }
  const sleeve = joints.around("jack.sleeve");
  const tip = joints.around("jack.tip");
  const node = (lug: string) => {
    if (sleeve.has(lug)) return "0";
    return tip.has(lug) ? "out" : `n_${[...joints.around(lug)].sort()[0]!.replaceAll(/[.-]/g, "_")}`.toLowerCase();
  };
  const two = (kind: string, name: string, a: string, b: string, value: number) =>
    node(a) === node(b) ? [] : [`${kind}${name} ${node(a)} ${node(b)} ${value}`];
  const cards = Object.entries(build.parts).flatMap(([name, part]): string[] => {
    if (part.kind === "pickup") return pickupCards(name, part, node);
    if (part.kind === "cap") return two("C", name, `${name}.a`, `${name}.b`, part.capacitance);
    if (part.kind === "resistor") return two("R", name, `${name}.a`, `${name}.b`, part.resistance);
    if (part.kind !== "pot") return [];
    const dial = settings[name] ?? 10;
    if (part.noLoad && dial === 10) return [];
    // Tapers are held to a second reading of their own, in test/outside.
    const low = (part.measured ?? part.resistance) * wiperShare(part, dial);
    const high = (part.measured ?? part.resistance) - low;
    return [
      ...(low > 0 ? two("R", `${name}_low`, `${name}.1`, `${name}.2`, low) : []),
      ...(high > 0 ? two("R", `${name}_high`, `${name}.2`, `${name}.3`, high) : []),
    ];
  });
  const cable = build.cable ? build.cable.length * build.cable.capacitance : 0;
  const farads = cable + build.load.capacitance;
  return [
    // Ties nodes that hang on capacitors alone; 1 PΩ moves nothing that is measured here.
    ".options rshunt=1e15",
    ...cards,
    ...(farads > 0 ? [`Ccable out 0 ${farads}`] : []),
    `Rload out 0 ${build.load.resistance}`,
  ];
}
