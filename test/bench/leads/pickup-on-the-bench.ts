import type { LeadsRequest } from "../../../src/bench/leads/leads-request.ts";

/**
 * A pickup as a bench would meet it, modelled anew: nets of lugs with coils between them, solved as a network. Ends are "0s" and
 * "0f" of the first coil (start, finish), "1s" and "1f" of the second; "metal" is the metal.
 */
export interface BenchPickup {
  readonly coils: number;
  /** Which ends, and the metal, are one net. */
  readonly nets: readonly (readonly string[])[];
  /** By lead: its net, or −1. */
  readonly leads: readonly number[];
  /** By coil: "N" or "S" up. */
  readonly magnets: readonly ("N" | "S")[];
  /** By coil: open inside. */
  readonly open: readonly boolean[];
}

const LEAST_SIEMENS = 1e-12;

interface Branch {
  readonly from: number;
  readonly to: number;
  readonly ohms: number;
  readonly volts: number;
}

function branches({ coils, nets, open }: BenchPickup, ohms: readonly number[], volts: readonly number[]): Branch[] {
  const netOf = (end: string) => nets.findIndex((net) => net.includes(end));
  return Array.from({ length: coils }, (_, coil) => coil).flatMap((coil) =>
    open[coil] ? [] : [{ from: netOf(`${coil}s`), to: netOf(`${coil}f`), ohms: ohms[coil]!, volts: volts[coil]! }],
  );
}

/** Node voltages by Gauss–Jordan, every net leaking a little to ground so that none floats. */
function solve(size: number, all: readonly Branch[], amps: readonly number[]): number[] {
  const rows = Array.from({ length: size }, (_, row) =>
    Array.from({ length: size + 1 }, (_, column) =>
      column === size ? amps[row]! : column === row ? LEAST_SIEMENS : 0,
    ),
  );
  for (const { from, to, ohms, volts } of all) {
    for (const [a, b] of [
      [from, to],
      [to, from],
    ] as const) {
      rows[a]![a]! += 1 / ohms;
      rows[a]![b]! -= 1 / ohms;
    }
    rows[to]![size]! += volts / ohms;
    rows[from]![size]! -= volts / ohms;
  }
  for (let pivot = 0; pivot < size; pivot++)
    for (let row = 0; row < size; row++) {
      if (row === pivot) continue;
      const factor = rows[row]![pivot]! / rows[pivot]![pivot]!;
      for (let column = pivot; column <= size; column++) rows[row]![column]! -= factor * rows[pivot]![column]!;
    }
  return rows.map((row, index) => row[size]! / row[index]!);
}

/** Ohms between two nets; null where open. */
function ohmsBetween(pickup: BenchPickup, ohms: readonly number[], a: number, b: number): number | null {
  if (a < 0 || b < 0) return null;
  if (a === b) return 0;
  const amps = pickup.nets.map((_, net) => (net === a ? 1e-6 : net === b ? -1e-6 : 0));
  const volts = solve(pickup.nets.length, branches(pickup, ohms, [0, 0]), amps);
  const seen = (volts[a]! - volts[b]!) / 1e-6;
  return seen > 1e9 ? null : seen;
}

/** The volts of a tap on a row whose coil is forward: one volt over north with + on its finish. */
function voltsOfTap(pickup: BenchPickup, ohms: readonly number[], row: number, plus: number, minus: number): number {
  if (plus < 0 || minus < 0 || plus === minus) return 0;
  const emfs = [0, 1].map((coil) => (coil === row ? (pickup.magnets[coil] === "N" ? 1 : -1) : 0));
  const all = branches(pickup, ohms, emfs);
  const volts = solve(
    pickup.nets.length,
    all,
    pickup.nets.map(() => 0),
  );
  const isReached = ohmsBetween(pickup, ohms, plus, minus) !== null;
  return isReached ? volts[plus]! - volts[minus]! : 0;
}

const pairsOf = (count: number) =>
  Array.from({ length: count }, (_, a) =>
    Array.from({ length: count - a - 1 }, (_, b) => [a, a + b + 1] as const),
  ).flat();

export const LEAD_NAMES = ["red", "white", "grey", "brown", "bare"];
export const rowNames = (coils: number) => (coils === 1 ? ["poles"] : ["screws", "slugs"]);

/** All that can be measured of a pickup. @param noise a factor on each reading of ohms */
export function measured(pickup: BenchPickup, ohms: readonly number[], noise: () => number = () => 1): LeadsRequest {
  const leads = LEAD_NAMES.slice(0, pickup.leads.length);
  const metal = pickup.nets.findIndex((net) => net.includes("metal"));
  const read = (a: number, b: number) => {
    const seen = ohmsBetween(pickup, ohms, a, b);
    return seen === null ? null : seen === 0 ? 0.3 : seen * noise();
  };
  return {
    leads,
    coils: pickup.coils as 1 | 2,
    rows: rowNames(pickup.coils),
    temperature: 20,
    readings: pairsOf(leads.length).map(([a, b]) => ({
      between: [leads[a]!, leads[b]!],
      ohms: read(pickup.leads[a]!, pickup.leads[b]!),
    })),
    metal: leads.map((lead, index) => ({ lead, ohms: read(pickup.leads[index]!, metal) })),
    compass: rowNames(pickup.coils).map((row, coil) => ({
      row,
      draws: pickup.magnets[coil] === "N" ? "south" : "north",
    })),
    kicks: rowNames(pickup.coils).flatMap((row, coil) =>
      pairsOf(leads.length).map(([plus, minus]) => {
        const volts = voltsOfTap(pickup, ohms, coil, pickup.leads[plus]!, pickup.leads[minus]!);
        return {
          row,
          between: [leads[plus]!, leads[minus]!] as const,
          kick: Math.abs(volts) < 0.1 ? ("none" as const) : volts > 0 ? ("up" as const) : ("down" as const),
        };
      }),
    ),
  };
}

/** Every arrangement of the ends of one coil or two, joined inside or not. */
function joinings(coils: number): string[][][] {
  if (coils === 1) return [[["0s"], ["0f"]]];
  const series = ["0s", "0f"].flatMap((a) =>
    ["1s", "1f"].map((b) => [[a === "0s" ? "0f" : "0s"], [a, b], [b === "1s" ? "1f" : "1s"]]),
  );
  return [
    [["0s"], ["0f"], ["1s"], ["1f"]],
    ...series,
    [
      ["0s", "1s"],
      ["0f", "1f"],
    ],
    [
      ["0s", "1f"],
      ["0f", "1s"],
    ],
  ];
}

function withMetal(nets: readonly string[][]): string[][][] {
  return [
    [...nets, ["metal"]],
    ...nets.map((_, at) => nets.map((net, index) => (index === at ? [...net, "metal"] : net))),
  ];
}

/** Every way to put so many leads on nets: each end's net has one, a joint in a row may, and the metal may have one besides. */
function leadings(nets: readonly (readonly string[])[], count: number): number[][] {
  const ways: number[][] = [];
  const go = (leads: number[]) => {
    if (leads.length === count) {
      const isWhole = nets.every((net, index) => {
        const own = leads.filter((lead) => lead === index).length;
        const ends = net.filter((end) => end !== "metal").length;
        const hasMetal = net.includes("metal");
        if (ends === 0) return own <= 1;
        if (own === 2) return hasMetal;
        return own === 1 || (own === 0 && ends === 2 && !hasMetal && isSeriesOf(nets));
      });
      if (isWhole) ways.push(leads);
      return;
    }
    for (let net = 0; net < nets.length; net++) go([...leads, net]);
  };
  go([]);
  return ways;
}

/** Two coils in a row have three nets of ends. */
function isSeriesOf(nets: readonly (readonly string[])[]): boolean {
  return nets.filter((net) => net.some((end) => end !== "metal")).length === 3;
}

/** Every sound pickup with so many leads, every labelling and every polarity. */
export function everyPickup(coils: number, leadCount: number): BenchPickup[] {
  const magnets = coils === 1 ? [["N"], ["S"]] : ["NN", "NS", "SN", "SS"].map((each) => each.split(""));
  return joinings(coils)
    .flatMap(withMetal)
    .flatMap((nets) =>
      leadings(nets, leadCount).flatMap((leads) =>
        magnets.map((tops) => ({
          coils,
          nets,
          leads,
          magnets: tops as ("N" | "S")[],
          open: Array.from({ length: coils }, () => false),
        })),
      ),
    );
}
