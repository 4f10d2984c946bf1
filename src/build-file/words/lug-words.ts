import { DisjointSets } from "../../disjoint-sets.ts";
import { listed } from "../../english.ts";
import { contactLug } from "../lug-names.ts";
import { LugTable, type SwitchControl, switchControls } from "../lugs.ts";
import type { Build, Part, Pickup } from "../schema.ts";
import { FRAME_LUG } from "../switch-types.ts";
import { partWords, pickupPlace } from "./part-words.ts";

const SIDES = ["first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth"];
const LETTERS = "ABCDEFGH";

const TRACK_WORDS: Readonly<Record<string, string>> = {
  "1": "lug 1 (counter-clockwise end)",
  "2": "lug 2 (wiper)",
  "3": "lug 3 (clockwise end)",
  b1: "second track, lug 1 (counter-clockwise end)",
  b2: "second track, lug 2 (wiper)",
  b3: "second track, lug 3 (clockwise end)",
  case: "case",
};

/** "slug coil (north), start (red)": with what the person calls the lead there. */
function pickupLug(part: Part, local: string): string {
  if (part.kind !== "pickup") return local;
  const lead = part.leads?.[local];
  return lead === undefined ? bareLug(part, local) : `${bareLug(part, local)} (${lead})`;
}

/** "slug coil (north), start"; poles tell the coils apart where they differ. */
function bareLug(part: Pickup, local: string): string {
  if (local === "shield") return part.metal === undefined || part.metal === "none" ? "shield" : part.metal;
  const [coil, end] = local.split(".");
  if (end === undefined) return local === "hot" ? "hot lead" : "ground lead";
  const magnets = Object.values(part.coils).map(({ magnet }) => magnet);
  const pole = new Set(magnets).size === magnets.length ? ` (${part.coils[coil!]?.magnet})` : "";
  return `${coil} coil${pole}, ${end}`;
}

/** A switch's lugs told by what they are joined to and what is on them. */
class SwitchLugs {
  readonly #control: SwitchControl;
  readonly #occupants: (lug: string) => readonly string[];

  constructor(control: SwitchControl, occupants: (lug: string) => readonly string[]) {
    this.#control = control;
    this.#occupants = occupants;
  }

  words(local: string): string {
    const { lugs, positions } = this.#control.table;
    if (local === FRAME_LUG) return "frame";
    const [letter, number] = [local.charAt(0), local.slice(1)];
    const contacts = lugs.filter((lug) => lug !== FRAME_LUG);
    const isPoled = contacts.every((lug) => /^[A-H]\d+$/.test(lug));
    if (!isPoled) return `lug ${local}`;
    const hasSides = contacts.some((lug) => lug.charAt(0) !== "A");
    const side = hasSides ? `, ${SIDES[LETTERS.indexOf(letter)]} side` : "";
    if (number === "0") return `common${side}`;
    const joined = this.#positionsOf(local);
    const own = this.#occupant(joined.join());
    if (own !== undefined) return `lug of the ${own}${side}`;
    if (positions.length === 2) return `${joined.includes(1) ? "down" : "up"} lug${side}`;
    return `lug of position${joined.length === 1 ? "" : "s"} ${listed(joined)}${side}`;
  }

  #positionsOf(local: string): number[] {
    const { positions } = this.#control.table;
    const isJoined = (groups: readonly (readonly string[])[]) =>
      groups.some((group) => group.length > 1 && group.includes(local));
    return positions.flatMap((groups, index) => (isJoined(groups) ? [index + 1] : []));
  }

  /** The one pickup, or volume, that has a lug of its own for these positions, on whichever side. */
  #occupant(positions: string): string | undefined {
    if (this.#control.onShaft || this.#control.table.positions.length < 3) return undefined;
    const alike = this.#control.table.lugs.filter((lug) => this.#positionsOf(lug).join() === positions);
    const found = new Set(alike.flatMap((lug) => this.#occupants(contactLug(this.#control.name, lug))));
    return found.size === 1 ? [...found][0] : undefined;
  }
}

/** Every lug of a guard as a person calls it: "lower tone, lug 1 (counter-clockwise end)". No two are called the same. */
export class LugWords {
  readonly parts: ReadonlyMap<string, string>;
  readonly #words = new Map<string, string>();
  readonly #codes = new Map<string, string>();
  readonly #table: LugTable;

  constructor(build: Pick<Build, "parts" | "wires">) {
    this.parts = partWords(build.parts);
    this.#table = new LugTable(build.parts);
    const switches = this.#switchLugs(build);
    for (const { name, part, local } of this.#table.lugs) {
      const words = this.#wordsOf(build.parts[part]!, part, local, switches);
      const own = this.#codes.has(words.toLowerCase()) ? `${words} (${name})` : words;
      this.#words.set(name, own);
      this.#codes.set(own.toLowerCase(), name);
    }
  }

  /** What a lug is called; a name that no lug has comes back as it is. */
  of(lug: string): string {
    const index = this.#table.find(lug);
    return index === undefined ? lug : this.#words.get(this.#table.nameAt(index))!;
  }

  /** The lug that is called so, in words or by any of its names, capitals or not; undefined where none is. */
  find(text: string): string | undefined {
    const written = text.trim();
    const index = this.#table.find(written);
    if (index !== undefined) return this.#table.nameAt(index);
    const lower = written.toLowerCase();
    return this.#codes.get(lower) ?? this.#table.names().find((name) => name.toLowerCase() === lower);
  }

  /** Every lug's own name with its words, in the build file's order. */
  entries(): IterableIterator<[string, string]> {
    return this.#words.entries();
  }

  #wordsOf(part: Part, name: string, local: string, switches: ReadonlyMap<string, SwitchLugs>): string {
    const words = this.parts.get(name)!;
    switch (part.kind) {
      case "pickup":
        return `${words}, ${pickupLug(part, local)}`;
      case "pot":
        if (local in TRACK_WORDS) return `${words}, ${TRACK_WORDS[local]}`;
        return `${words}'s push-pull, ${switches.get(name)!.words(local.replace(/^s\./, ""))}`;
      case "switch":
        return `${words}, ${switches.get(name)!.words(local)}`;
      case "cap":
      case "resistor":
        return `${words}, ${local === "a" ? "one" : "other"} leg`;
      case "jack":
        return `${words}, ${local}`;
      case "terminal":
        return words;
    }
  }

  #switchLugs({ parts, wires }: Pick<Build, "parts" | "wires">): Map<string, SwitchLugs> {
    const sets = new DisjointSets(this.#table.lugs.length);
    for (const { from, to } of wires) {
      const ends = [this.#table.find(from), this.#table.find(to)];
      if (ends[0] !== undefined && ends[1] !== undefined) sets.join(ends[0], ends[1]);
    }
    const sleeves = this.#table.lugs.flatMap(({ local, part }, index) =>
      local === "sleeve" && parts[part]!.kind === "jack" ? [sets.find(index)] : [],
    );
    const occupants = (lug: string) => {
      const net = sets.find(this.#table.indexOf(lug));
      if (sleeves.includes(net)) return [];
      const there = this.#table.lugs.filter((_, index) => sets.find(index) === net).map(({ part }) => part);
      const isVolume = (part: Part) => part.kind === "pot" && part.role === "volume";
      return [...new Set(there)].flatMap((name) => {
        const part = parts[name]!;
        if (part.kind === "pickup") return [`${pickupPlace([name, part])} pickup`];
        return isVolume(part) ? [this.parts.get(name)!] : [];
      });
    };
    return new Map(switchControls(parts).map((control) => [control.part, new SwitchLugs(control, occupants)]));
  }
}
