import { localCoilLeads } from "../../build-file/lug-names.ts";
import type { Part } from "../../build-file/schema.ts";

export interface Point {
  readonly x: number;
  readonly y: number;
}

export interface LugSpot extends Point {
  /** The lug's name within its part. */
  readonly local: string;
  /** Where wires leave to: −1 up, 1 down, 0 sideways. */
  readonly out: -1 | 0 | 1;
  readonly label: string;
  /** The side on which its name stands, where it does not stand above or below. */
  readonly beside?: -1 | 1;
  /** Of a part that is turned, where none of the above holds any more. */
  readonly turned?: TurnedLug;
}

/** Unit vectors from a lug. */
export interface TurnedLug {
  /** Where its wires leave to. */
  readonly leave: Point;
  /** Where its name stands. */
  readonly name: Point;
}

/** A part as it is drawn, about its own middle, as seen from the front, the neck to the right and the treble side down; the drawing's units are about a third of a millimetre. */
export interface Shape {
  readonly width: number;
  /** How far it reaches above and below its middle. */
  readonly up: number;
  readonly down: number;
  readonly lugs: readonly LugSpot[];
}

export const SIZES = {
  coilWidth: 46,
  coilGap: 84,
  coilHeight: 140,
  potRadius: 36,
  lugGap: 32,
  leadGap: 41,
  switchGap: 42,
  switchRow: 44,
  shaftGap: 40,
  jackRadius: 28,
} as const;

const { coilGap, coilHeight, potRadius, lugGap, leadGap, switchGap, switchRow, shaftGap } = SIZES;

type PartOf<Kind extends Part["kind"]> = Extract<Part, { kind: Kind }>;

function spread(locals: readonly string[], gap: number, y: number, out: -1 | 1, centre = 0): LugSpot[] {
  const from = centre - ((locals.length - 1) * gap) / 2;
  return locals.map((local, index) => ({ local, x: from + index * gap, y, out, label: local.split(".").at(-1)! }));
}

/** Where the coils of a pickup lie within it. */
export function coilCentres(pickup: PartOf<"pickup">): { coil: string; x: number }[] {
  const coils = Object.keys(pickup.coils);
  return coils.map((coil, index) => ({ coil, x: (index - (coils.length - 1) / 2) * coilGap }));
}

function pickupShape(pickup: PartOf<"pickup">): Shape {
  const y = coilHeight / 2 + 20;
  const centres = coilCentres(pickup);
  const width = centres.length * coilGap;
  const separate = centres.length === 2 && pickup.conductors !== 2;
  const leads = separate
    ? centres.flatMap(({ coil, x }) => spread(localCoilLeads(coil), leadGap, y, 1, x))
    : spread(["hot", "ground"], leadGap + 4, y, 1);
  const right = Math.max(...leads.map((lug) => lug.x));
  const shield: LugSpot = { local: "shield", x: right + leadGap + 4, y, out: 1, label: "shield" };
  return {
    width: Math.max(width, 2 * (shield.x + 18)),
    up: coilHeight / 2 + 34,
    down: coilHeight / 2 + 34,
    lugs: [...leads, shield],
  };
}

/** Lugs of a switch by pole: "A0" belongs to pole A; names that say no pole are a row of their own. */
export function poleRows(lugs: readonly string[]): string[][] {
  const rows = new Map<string, string[]>();
  for (const lug of lugs) {
    const pole = /^[A-H](?=\d+$)/.exec(lug)?.[0] ?? "";
    rows.set(pole, [...(rows.get(pole) ?? []), lug]);
  }
  return [...rows.values()];
}

function switchShape(lugs: readonly string[]): Shape {
  const rows = poleRows(lugs);
  const longest = Math.max(...rows.map((row) => row.length));
  const top = -((rows.length - 1) * switchRow) / 2;
  const spots = rows.flatMap((row, index) =>
    spread(row, switchGap, top + index * switchRow, index < rows.length / 2 ? -1 : 1),
  );
  const half = (rows.length * switchRow) / 2 + 10;
  return { width: Math.max(longest * switchGap + 26, 170), up: half, down: half + 26, lugs: spots };
}

/**
 * A pot's own lugs lie in a row above it, its case lug on it; a switch on the shaft lies below, poles as columns. Lug 1 is the
 * counter-clockwise end (dial 0) and 3 the clockwise one: from the front with the lugs up they read 3, 2, 1.
 */
function potShape(pot: PartOf<"pot">, shaftLugs: readonly string[]): Shape {
  const tracks = spread(["3", "2", "1"], lugGap, -potRadius - 18, -1);
  const second = pot.gangs ? spread(["b3", "b2", "b1"], lugGap, -potRadius - 46, -1) : [];
  const caseLug: LugSpot = { local: "case", x: 0, y: potRadius - 12, out: 1, label: "case" };
  const rows = poleRows(shaftLugs);
  const shaft = rows.flatMap((row, column) =>
    // The common stands between its throws, as on the switch itself.
    [row[1], row[0], ...row.slice(2)]
      .filter((lug) => lug !== undefined)
      .map((lug, index) => ({
        local: `s.${lug}`,
        x: (column - (rows.length - 1) / 2) * (shaftGap + 12),
        y: potRadius + 66 + index * 30,
        out: 0 as const,
        label: lug,
        beside: column < rows.length / 2 ? (-1 as const) : (1 as const),
      })),
  );
  const below = rows.length === 0 ? 36 : 66 + Math.max(...rows.map((row) => row.length)) * 30;
  const above = pot.gangs ? 66 : 38;
  return {
    width: 132,
    up: potRadius + above,
    down: potRadius + below,
    lugs: [...tracks, ...second, caseLug, ...shaft],
  };
}

function jackShape(jack: PartOf<"jack">): Shape {
  const locals = ["tip", ...(jack.stereo ? ["ring"] : []), "sleeve"];
  return { width: 120, up: 60, down: 56, lugs: spread(locals, 44, -SIZES.jackRadius - 12, -1) };
}

const twoLegs: Shape = {
  width: 110,
  up: 34,
  down: 26,
  lugs: [
    { local: "a", x: -34, y: 0, out: 0, label: "" },
    { local: "b", x: 34, y: 0, out: 0, label: "" },
  ],
};

export function shapeOf(part: Part, shaftLugs: readonly string[], switchLugs: readonly string[]): Shape {
  switch (part.kind) {
    case "pickup":
      return pickupShape(part);
    case "pot":
      return potShape(part, shaftLugs);
    case "switch":
      return switchShape(switchLugs);
    case "jack":
      return jackShape(part);
    case "cap":
    case "resistor":
      return twoLegs;
    case "terminal":
      return { width: 120, up: 20, down: 40, lugs: [{ local: "", x: 0, y: 0, out: 0, label: "" }] };
  }
}
