import type { Build, Part, PartOf } from "../../build-file/schema.ts";
import type { CutWire } from "../sheet/wire/cut-list.ts";
import { type Description, describePart } from "./describe-part.ts";
import { TAPER_NOTE } from "./printed-codes.ts";

/** What the user already has: a part as in a build, and how many of it. */
export interface DrawerItem {
  readonly part: Part;
  readonly quantity: number;
}

export interface PartsLine extends Description {
  readonly quantity: number;
  readonly fromDrawer: number;
  readonly toBuy: number;
  readonly parts: readonly string[];
}

export interface WireLine {
  readonly colour: string;
  readonly pieces: number;
  readonly metres: number;
}

export interface PartsList {
  readonly lines: readonly PartsLine[];
  readonly wire: readonly WireLine[];
  readonly totals: {
    readonly parts: number;
    readonly fromDrawer: number;
    readonly toBuy: number;
    readonly wireMetres: number;
  };
  readonly notes: readonly string[];
}

/** Parts in a drawer serve for any of the same value; a cap's tolerance does not matter there. */
function stockKey(part: Part): string {
  if (part.kind === "cap") return `cap ${part.capacitance.toPrecision(4)}`;
  if (part.kind === "resistor") return `resistor ${part.resistance.toPrecision(4)}`;
  return describePart(part).what;
}

/** A pickup's values without the place it happens to sit in. */
function coilsOf({ coils }: PartOf<"pickup">): object[] {
  return Object.values(coils).map(({ distance: _distance, slant: _slant, ...values }) => values);
}

/** Points of the guitar itself are soldered to, not bought. */
function isBought(part: Part): boolean {
  return part.kind !== "terminal";
}

function wireLines(cuts: readonly CutWire[]): WireLine[] {
  const colours = [...new Set(cuts.map(({ colour }) => colour))];
  return colours.map((colour) => {
    const pieces = cuts.filter((cut) => cut.colour === colour);
    const metres = pieces.reduce((sum, { cut }) => sum + cut, 0);
    return { colour, pieces: pieces.length, metres: Math.round(metres * 1000) / 1000 };
  });
}

/** What the build takes, equal parts on one line in the build's order, less what the drawer holds. */
export function partsList(build: Build, cuts: readonly CutWire[], drawer: readonly DrawerItem[] = []): PartsList {
  const stock = new Map<string, number>();
  for (const { part, quantity } of drawer) stock.set(stockKey(part), (stock.get(stockKey(part)) ?? 0) + quantity);
  const needed = new Map<string, { description: Description; stockKey: string; parts: string[] }>();
  for (const [name, part] of Object.entries(build.parts)) {
    if (!isBought(part)) continue;
    const description = describePart(part);
    const key = part.kind === "pickup" ? JSON.stringify([description.what, coilsOf(part)]) : description.what;
    const line = needed.get(key) ?? { description, stockKey: stockKey(part), parts: [] };
    line.parts.push(name);
    needed.set(key, line);
  }
  const lines = [...needed.values()].map(({ description, stockKey: key, parts }): PartsLine => {
    const held = stock.get(key) ?? 0;
    const fromDrawer = Math.min(parts.length, held);
    stock.set(key, held - fromDrawer);
    return { ...description, quantity: parts.length, fromDrawer, toBuy: parts.length - fromDrawer, parts };
  });
  const wire = wireLines(cuts);
  const sum = (of: (line: PartsLine) => number) => lines.reduce((total, line) => total + of(line), 0);
  return {
    lines,
    wire,
    totals: {
      parts: sum((line) => line.quantity),
      fromDrawer: sum((line) => line.fromDrawer),
      toBuy: sum((line) => line.toBuy),
      wireMetres: Math.round(wire.reduce((total, { metres }) => total + metres, 0) * 1000) / 1000,
    },
    notes: Object.values(build.parts).some(({ kind }) => kind === "pot") ? [TAPER_NOTE] : [],
  };
}
