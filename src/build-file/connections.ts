import { LugTable } from "./lugs.ts";
import type { Build, Part, Wire } from "./schema.ts";
import type { WireMeans } from "./wire-means.ts";

/** One connection of the build, its lugs by their first names. */
export interface Connection {
  /** From 1, in the build's order. */
  readonly number: number;
  readonly from: string;
  readonly to: string;
  readonly means: WireMeans;
  /** Lugs that the connection grows out of, with nothing to solder there: a cap's leg, a pickup's own lead, a lug bent to its case. */
  readonly grownFrom: readonly string[];
}

type WireDetails = Extract<Wire, { how?: unknown; length?: unknown }>;

/** A wire with whatever the build says of it. */
export function detailsOf(wire: Wire): WireDetails {
  return wire;
}

function isCase(lug: string): boolean {
  return lug.endsWith(".case");
}

function partOf(lug: string): string {
  return lug.split(".")[0]!;
}

function isLegged(part: Part | undefined): boolean {
  return part?.kind === "cap" || part?.kind === "resistor";
}

/** What a wire is made of where the build does not say. */
function usualMeans(from: string, to: string, parts: Build["parts"], free: (lug: string) => boolean): WireMeans {
  const [a, b] = [parts[partOf(from)], parts[partOf(to)]];
  const samePart = partOf(from) === partOf(to);
  // A lug of the switch on its shaft does not reach the case: that is a jumper.
  const onShaft = [from, to].some((lug) => lug.split(".")[1] === "s");
  if (samePart && a?.kind === "pot" && !onShaft && (isCase(from) || isCase(to))) return "bent lug";
  if (samePart && a?.kind !== "pickup") return "jumper";
  if ((isLegged(a) && free(from)) || (isLegged(b) && free(to))) return "leg";
  if ((a?.kind === "pickup" && free(from)) || (b?.kind === "pickup" && free(to))) return "lead";
  return "wire";
}

/**
 * The build's wires as a technician makes them. A cap's or resistor's leg and a pickup's lead serve one connection each, the
 * first that the build names; whatever else meets that lug is a wire soldered to it.
 */
export function connectionsOf(build: Build): Connection[] {
  const table = new LugTable(build.parts);
  const used = new Set<string>();
  const free = (lug: string) => !used.has(lug);
  return build.wires.map((wire, index) => {
    const [from, to] = [wire.from, wire.to].map((lug) => table.nameAt(table.indexOf(lug))) as [string, string];
    const means = detailsOf(wire).how ?? usualMeans(from, to, build.parts, free);
    const grows = (lug: string) => {
      // A bent lug is soldered at the case alone.
      if (means === "bent lug") return !isCase(lug) && (isCase(from) || isCase(to));
      const part = build.parts[partOf(lug)];
      return free(lug) && ((means === "leg" && isLegged(part)) || (means === "lead" && part?.kind === "pickup"));
    };
    const grownFrom = means === "inside" ? [from, to] : [from, to].filter(grows);
    if (means !== "bent lug") for (const lug of grownFrom) used.add(lug);
    return { number: index + 1, from, to, means, grownFrom };
  });
}

/** Whether a connection is cut from a reel, and so has a length and a colour. */
export function isCut({ means }: Pick<Connection, "means">): boolean {
  return means === "wire" || means === "jumper" || means === "bus wire" || means === "braid";
}
