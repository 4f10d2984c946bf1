import { switchBodies } from "../../../build-file/bodies/bodies-of.ts";
import { lugSpots } from "../../../build-file/bodies/lug-spots.ts";
import type { BuildInput, PartOf } from "../../../build-file/schema.ts";
import { type Grid, gridOfSpots } from "../bodies/grid.ts";
import type { Contacts } from "../known/known-specs.ts";
import type { FoundLug } from "../question.ts";
import { groupsOf } from "./poles.ts";
import type { FoundReading } from "./reading.ts";

export type SwitchInput = Extract<BuildInput["parts"][string], { kind: "switch" }>;

const LUG_NAME = /^[A-Za-z0-9_-]{1,16}$/;

/** Names that a build file can have: the person's own where all of them are such, else L1, L2, … in their order. */
export function buildNames(lugs: readonly FoundLug[]): string[] {
  return lugs.every(({ name }) => LUG_NAME.test(name))
    ? lugs.map(({ name }) => name)
    : lugs.map((_, index) => `L${index + 1}`);
}

type Rows = (string | null)[][];

/** Rows of lugs as they were found, empty places before and between them kept; undefined where it was not told how they sit. */
function rowsAsFound(lugs: readonly FoundLug[], names: readonly string[]): Rows | undefined {
  const spots = lugs.flatMap(({ spot }) => (spot ? [spot] : []));
  if (spots.length < lugs.length) return undefined;
  const [columns, rows] = [spots.map(({ x }) => x), spots.map(({ y }) => y)].map((all) =>
    [...new Set(all)].sort((a, b) => a - b),
  );
  return rows!.map((y) => {
    const row = columns!.map((x) => names[spots.findIndex((spot) => spot.x === x && spot.y === y)] ?? null);
    return row.slice(0, row.findLastIndex((lug) => lug !== null) + 1);
  });
}

function hasBodyOf(part: SwitchInput, rows: Rows, body: FoundReading["body"]): boolean {
  const grid: Grid = gridOfSpots(lugSpots({ ...part, body } as PartOf<"switch">));
  return JSON.stringify(grid) === JSON.stringify(rows.map((row) => row.filter((lug) => lug !== null)));
}

/** A known switch as a part of a build file, its lugs where they were found. */
export function knownPart(reading: FoundReading, lugs: readonly FoundLug[]): SwitchInput {
  const { positions: _, ...spec } = reading.spec;
  const part: SwitchInput = { kind: "switch", ...spec };
  const rows = rowsAsFound(lugs, reading.lugs);
  if (!rows) return part;
  const body = switchBodies(part as PartOf<"switch">).find(({ name }) => hasBodyOf(part, rows, name));
  return body ? { ...part, body: body.name } : { ...part, lugRows: rows };
}

/** A switch of one's own; undefined where a build file cannot hold its table. */
export function ownPart(contacts: Contacts, lugs: readonly FoundLug[], positions: number): SwitchInput | undefined {
  const names = buildNames(lugs);
  const groups = groupsOf(contacts, lugs.length, positions).map((each) =>
    each.map((group) => group.map((lug) => names[lug]!)),
  );
  const joined = new Set(groups.flat(2));
  // A lug that no position joins is named all the same, by itself in the first.
  const alone = names.filter((name) => !joined.has(name)).map((name) => [name]);
  const table = groups.map((each, index) => (index === 0 ? [...each, ...alone] : each));
  if (table.some((each) => each.length > MOST || each.some((group) => group.length > MOST))) return undefined;
  const rows = rowsAsFound(lugs, names);
  return { kind: "switch", positions: table, ...(rows ? { lugRows: rows } : {}) };
}

/** Groups of a position, and lugs of a group, that a build file holds. */
const MOST = 24;
