import { pickupType } from "../../build-file/catalogue/pickup-types.ts";
import type { Build, Part } from "../../build-file/schema.ts";
import type { SwitchSpec } from "../../build-file/switch-types.ts";
import { SWITCH_WORDS } from "../../build-file/switch-words.ts";
import { valueTolerance } from "../../build-file/tolerances.ts";
import { ohmsText } from "../ohms-text.ts";
import type { CutWire } from "../sheet/cut-list.ts";
import { capacitorCode, potCode, resistorBands, TAPER_NOTE, toleranceLetter } from "./printed-codes.ts";

/** What the user already has: a part as in a build, and how many of it. */
export interface DrawerItem {
  readonly part: Part;
  readonly quantity: number;
}

export interface PartsLine {
  readonly what: string;
  /** What is printed on the part; null where nothing customary is. */
  readonly code: string | null;
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

interface Description {
  readonly what: string;
  readonly code: string | null;
}

function percent(fraction: number): string {
  return `±${Number((fraction * 100).toPrecision(3))} %`;
}

/** As many figures as any code or meter gives. */
const ohms = (value: number) => ohmsText(value, 4);

function farads(value: number): string {
  const [scaled, unit] =
    value >= 1e-6 ? [value * 1e6, "µF"] : value >= 1e-9 ? [value * 1e9, "nF"] : [value * 1e12, "pF"];
  return `${Number(scaled.toPrecision(4))} ${unit}`;
}

function describePot(part: Extract<Part, { kind: "pot" }>): Description {
  const code = potCode(part.resistance, part.taper);
  const letter = code === null ? "" : ` (${code[0]})`;
  const taper = typeof part.taper === "string" ? `${part.taper.replace("-", " ")} taper${letter}` : "special taper";
  const extras = [
    ...(part.gangs ? ["two gangs"] : []),
    ...(part.noLoad ? ["no-load"] : []),
    ...(part.drives ? [`with a ${switchWords(part.drives)} on its shaft`] : []),
  ];
  return {
    what: [`${ohms(part.resistance)} pot, ${taper}`, ...extras].join(", "),
    code,
  };
}

function switchWords({ type, centre, poles, throws, positions }: SwitchSpec): string {
  if (type === "rotary") return `rotary switch, poles: ${poles ?? 1}, positions: ${throws ?? 2}`;
  if (type) return `${SWITCH_WORDS[type]}${centre ? `, centre joins ${centre.replace("-", " and ")}` : ""}`;
  return `switch with ${positions?.length ?? 0} positions of its own`;
}

/** How a single coil differs from the usual one: forward, north to the strings. */
function turnedWords({ winding, magnet }: { winding: string; magnet: string }): string[] {
  return [...(winding === "reverse" ? ["reverse wound"] : []), ...(magnet === "south" ? ["reverse polarity"] : [])];
}

function describePickup(part: Extract<Part, { kind: "pickup" }>): Description {
  const coils = Object.values(part.coils);
  const title = part.type === undefined ? undefined : pickupType(part.type)?.title.toLowerCase();
  const name = title ?? (coils.length === 1 ? "single coil" : `pickup with ${coils.length} coils`);
  const resistances = coils.map((coil) => ohms(coil.resistance)).join(" + ");
  const words = [
    name,
    resistances,
    ...(coils.length === 2 ? [`${part.conductors ?? 4} conductors`] : []),
    ...(coils.length === 1 ? turnedWords(coils[0]!) : []),
  ];
  return { what: words.join(", "), code: null };
}

function describe(part: Part): Description {
  switch (part.kind) {
    case "pickup":
      return describePickup(part);
    case "pot":
      return describePot(part);
    case "switch":
      return { what: switchWords(part), code: null };
    case "cap": {
      const { fraction } = valueTolerance(part);
      const code = capacitorCode(part.capacitance);
      const letter = toleranceLetter(fraction);
      return { what: `cap ${farads(part.capacitance)} ${percent(fraction)}`, code: code && `${code}${letter ?? ""}` };
    }
    case "resistor": {
      const { fraction } = valueTolerance(part);
      const code = resistorBands(part.resistance, fraction);
      return { what: `resistor ${ohms(part.resistance)} ${percent(fraction)}`, code };
    }
    case "jack":
      return { what: part.stereo ? "stereo jack" : "jack", code: null };
    case "terminal":
      return { what: `connection point: ${part.role ?? "other"}`, code: null };
  }
}

/** Parts in a drawer serve for any of the same value; a cap's tolerance does not matter there. */
function stockKey(part: Part): string {
  if (part.kind === "cap") return `cap ${part.capacitance.toPrecision(4)}`;
  if (part.kind === "resistor") return `resistor ${part.resistance.toPrecision(4)}`;
  return describe(part).what;
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
    const description = describe(part);
    const key = part.kind === "pickup" ? JSON.stringify([description.what, part.coils]) : description.what;
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
