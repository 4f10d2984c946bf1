import { hasCoilLeads, localCoilLeads, localTrackLugs, shaftSwitch } from "./lug-names.ts";
import { editDistance, suggestion } from "./nearest.ts";
import type { Build, Part, Pickup, Pot } from "./schema.ts";
import { type SwitchTable, switchTable } from "./switch-types.ts";

/** One lug of a part: the name used in answers, and other names a wire may use for it. */
export interface Lug {
  readonly name: string;
  readonly part: string;
  /** The lug's name within its part: `hot`, `slug.start`, `1`, `case`, `s.A0`. */
  readonly local: string;
  readonly aliases: readonly string[];
}

interface LocalLug {
  readonly local: string;
  readonly aliases?: readonly string[];
}

function pickupLugs(pickup: Pickup): LocalLug[] {
  const coils = Object.keys(pickup.coils);
  const shield = { local: "shield" };
  if (coils.length === 1) {
    const [start, finish] = localCoilLeads(coils[0]!);
    return [{ local: "hot", aliases: [finish] }, { local: "ground", aliases: [start] }, shield];
  }
  if (!hasCoilLeads(pickup)) return [{ local: "hot" }, { local: "ground" }, shield];
  return [...coils.flatMap(localCoilLeads).map((local) => ({ local })), shield];
}

function potLugs(pot: Pot): LocalLug[] {
  const tracks = [0, ...(pot.gangs ? [1] : [])].flatMap(localTrackLugs);
  const shaftSwitch = pot.drives ? switchTable(pot.drives).lugs.map((lug) => `s.${lug}`) : [];
  return [...tracks, "case", ...shaftSwitch].map((local) => ({ local }));
}

function localLugs(part: Part): LocalLug[] {
  switch (part.kind) {
    case "pickup":
      return pickupLugs(part);
    case "pot":
      return potLugs(part);
    case "switch":
      return switchTable(part).lugs.map((local) => ({ local }));
    case "cap":
    case "resistor":
      return [{ local: "a" }, { local: "b" }];
    case "jack":
      return ["tip", ...(part.stereo ? ["ring"] : []), "sleeve"].map((local) => ({ local }));
    case "terminal":
      return [{ local: "" }];
  }
}

/** The lugs a part has. A terminal's one lug goes by the terminal's own name. */
export function lugsOfPart(name: string, part: Part): Lug[] {
  return localLugs(part).map(({ local, aliases = [] }) => ({
    name: local === "" ? name : `${name}.${local}`,
    part: name,
    local,
    aliases: aliases.map((alias) => `${name}.${alias}`),
  }));
}

/** Every lug of a build, findable by any of its names. */
export class LugTable {
  readonly lugs: readonly Lug[];
  readonly #indexByName = new Map<string, number>();
  readonly #indexByLocal = new Map<string, Map<string, number>>();

  constructor(parts: Build["parts"]) {
    this.lugs = Object.entries(parts).flatMap(([name, part]) => lugsOfPart(name, part));
    for (const [index, lug] of this.lugs.entries()) {
      for (const name of [lug.name, ...lug.aliases]) this.#indexByName.set(name, index);
      const ofPart = this.#indexByLocal.get(lug.part) ?? new Map<string, number>();
      this.#indexByLocal.set(lug.part, ofPart.set(lug.local, index));
    }
  }

  /** The lug's index in `lugs`, or undefined where no lug has this name. */
  find(name: string): number | undefined {
    return this.#indexByName.get(name);
  }

  /** Every name that a lug goes by. */
  names(): string[] {
    return [...this.#indexByName.keys()];
  }

  /** As `find`, for a name that validation has already accepted. */
  indexOf(name: string): number {
    const index = this.#indexByName.get(name);
    if (index === undefined) throw new RangeError(`no lug ${name}`);
    return index;
  }

  /** The indexes of a part's lugs by their names within it. */
  lugsOf(part: string): ReadonlyMap<string, number> {
    return this.#indexByLocal.get(part)!;
  }

  nameAt(index: number): string {
    return this.lugs[index]!.name;
  }

  /** Why a name is not known, with the nearest lug; a lead is never taken for the metal around it. */
  complaint(name: string): string {
    const [partName = "", ...rest] = name.split(".");
    const local = rest.join(".");
    const ofPart = this.lugs.filter((lug) => lug.part === partName);
    const coilLeads = ofPart.filter((lug) => lug.local.includes(".start") || lug.local.includes(".finish"));
    const known = `there is no lug "${name.slice(0, 60)}"`;
    if (coilLeads.length === 4 && (local === "hot" || local === "ground"))
      return `${known}; every coil of this pickup has leads of its own: ${namesOf(coilLeads).join(", ")}`;
    const meansShield = editDistance(local.slice(0, 20).toLowerCase(), "shield") <= 2;
    const likely = ofPart.filter((lug) => lug.local !== "shield" || meansShield);
    const candidates = ofPart.length > 0 ? namesOf(likely) : [...this.#indexByName.keys()];
    return `${known}${suggestion(name, candidates)}`;
  }
}

function namesOf(lugs: readonly Lug[]): string[] {
  return lugs.map((lug) => lug.name);
}

export interface SwitchControl {
  /** What settings call it: the switch's own name, or `<pot>.s` for one on a pot's shaft. */
  readonly name: string;
  readonly part: string;
  readonly table: SwitchTable;
  readonly onShaft: boolean;
}

/** The switches a person can set. */
export function switchControls(parts: Build["parts"]): SwitchControl[] {
  return Object.entries(parts).flatMap(([part, value]): SwitchControl[] => {
    if (value.kind === "switch") return [{ name: part, part, table: switchTable(value), onShaft: false }];
    if (value.kind === "pot" && value.drives)
      return [{ name: shaftSwitch(part), part, table: switchTable(value.drives), onShaft: true }];
    return [];
  });
}
