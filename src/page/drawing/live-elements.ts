import { hasCoilLeads, localCoilLeads, localTrackLugs } from "../../build-file/lug-names.ts";
import type { Build, Part } from "../../build-file/schema.ts";
import type { Settings } from "../../build-file/settings.ts";
import type { Wiring } from "../../wiring/nets.ts";

/** Something between two nets that a signal can pass: a coil, half of a pot's track, a cap, a resistor. */
export interface Element {
  readonly part: string;
  /** Of a pickup. */
  readonly coil?: string;
  readonly ends: readonly [string, string];
}

type Between = readonly [from: string, to: string, coil?: string];

function coilEnds(part: Extract<Part, { kind: "pickup" }>): Between[] {
  const coils = Object.keys(part.coils);
  // Two coils joined inside are one way through; which of them it is called does not matter here.
  if (!hasCoilLeads(part)) return [["ground", "hot", coils[0]!]];
  return coils.map((coil): Between => [...localCoilLeads(coil), coil]);
}

function waysThrough(part: Part): Between[] {
  switch (part.kind) {
    case "pickup":
      return coilEnds(part);
    case "pot":
      return [part, ...(part.gangs ?? [])].flatMap((_, gang): Between[] => {
        const [bottom, wiper, top] = localTrackLugs(gang);
        return [
          [bottom, wiper],
          [wiper, top],
        ];
      });
    case "cap":
    case "resistor":
      return [["a", "b"]];
    default:
      return [];
  }
}

export function elementsOf(build: Build): Element[] {
  return Object.entries(build.parts).flatMap(([name, part]) =>
    waysThrough(part).map(([from, to, coil]) => ({
      part: name,
      ...(coil === undefined ? {} : { coil }),
      ends: [`${name}.${from}`, `${name}.${to}`] as const,
    })),
  );
}

interface Edge {
  readonly element: Element;
  readonly a: number;
  readonly b: number;
}

/** Takes away again and again what ends in the air: no signal passes it. */
function withoutDeadEnds(edges: readonly Edge[], kept: ReadonlySet<number>): Edge[] {
  let remaining = [...edges];
  for (;;) {
    const degree = new Map<number, number>();
    for (const { a, b } of remaining) for (const net of [a, b]) degree.set(net, (degree.get(net) ?? 0) + 1);
    const next = remaining.filter(({ a, b }) => [a, b].every((net) => kept.has(net) || degree.get(net)! > 1));
    if (next.length === remaining.length) return next;
    remaining = next;
  }
}

/** What hangs together with the tip without going through ground. */
function reachedFrom(tip: number, sleeve: number, edges: readonly Edge[]): Edge[] {
  const nets = new Set([tip]);
  for (let size = 0; size !== nets.size; ) {
    size = nets.size;
    for (const { a, b } of edges) {
      if (nets.has(a) && b !== sleeve) nets.add(b);
      if (nets.has(b) && a !== sleeve) nets.add(a);
    }
  }
  return edges.filter(({ a, b }) => nets.has(a) || nets.has(b));
}

export interface LiveElements {
  readonly elements: readonly Element[];
  readonly tipNet: number;
  readonly sleeveNet: number;
  /** Net of every lug by any of its names. */
  readonly nets: ReadonlyMap<string, number>;
}

/** The elements that have a part in what reaches the jack: not shorted, no dead end, joined to the tip. */
export function liveElements(build: Build, wiring: Wiring, settings: Settings): LiveElements {
  const { netOfLug } = wiring.netsIn(settings);
  const nets = new Map(wiring.lugs.names().map((name) => [name, netOfLug[wiring.lugs.indexOf(name)]!]));
  const netOf = (lug: string) => nets.get(lug)!;
  const jack = Object.entries(build.parts).find(([, part]) => part.kind === "jack")![0];
  const [tipNet, sleeveNet] = [netOf(`${jack}.tip`), netOf(`${jack}.sleeve`)];
  const edges = elementsOf(build)
    .map((element) => ({ element, a: netOf(element.ends[0]), b: netOf(element.ends[1]) }))
    .filter(({ a, b }) => a !== b);
  const alive = reachedFrom(tipNet, sleeveNet, withoutDeadEnds(edges, new Set([tipNet, sleeveNet])));
  return { elements: tipNet === sleeveNet ? [] : alive.map((edge) => edge.element), tipNet, sleeveNet, nets };
}
