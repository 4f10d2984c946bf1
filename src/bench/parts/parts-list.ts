import type { Build, Part, PartOf } from "../../build-file/schema.ts";
import type { CutWire } from "../sheet/wire/cut-list.ts";
import { type Description, describePart } from "./describe-part.ts";
import { Drawer, type DrawerItem, type StaysOver } from "./drawer.ts";
import { TAPER_NOTE } from "./printed-codes.ts";

export interface PartsLine extends Description {
  readonly quantity: number;
  readonly fromDrawer: number;
  readonly toBuy: number;
  /** Which of the drawer's items are of this value, from 0. */
  readonly drawer: readonly number[];
  readonly parts: readonly string[];
}

export interface WireLine {
  readonly colour: string;
  readonly pieces: number;
  readonly metres: number;
}

export interface PartsList {
  readonly lines: readonly PartsLine[];
  readonly staysOver: readonly StaysOver[];
  readonly wire: readonly WireLine[];
  readonly totals: {
    readonly parts: number;
    readonly fromDrawer: number;
    readonly toBuy: number;
    readonly wireMetres: number;
  };
  readonly notes: readonly string[];
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
export function partsList(build: Build, cuts: readonly CutWire[], items: readonly DrawerItem[] = []): PartsList {
  const drawer = new Drawer(items);
  const needed = new Map<string, { description: Description; part: Part; parts: string[] }>();
  for (const [name, part] of Object.entries(build.parts)) {
    if (!isBought(part)) continue;
    const description = describePart(part);
    const key = part.kind === "pickup" ? JSON.stringify([description.what, coilsOf(part)]) : description.what;
    const line = needed.get(key) ?? { description, part, parts: [] };
    line.parts.push(name);
    needed.set(key, line);
  }
  const lines = [...needed.values()].map(({ description, part, parts }): PartsLine => {
    const quantity = parts.length;
    const { taken, items: held } = drawer.take(part, quantity);
    return { ...description, quantity, fromDrawer: taken, toBuy: quantity - taken, drawer: held, parts };
  });
  const wire = wireLines(cuts);
  const sum = (of: (line: PartsLine) => number) => lines.reduce((total, line) => total + of(line), 0);
  return {
    lines,
    staysOver: drawer.staysOver,
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
