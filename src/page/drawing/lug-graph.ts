import { contactLug } from "../../build-file/lug-names.ts";
import { switchControls } from "../../build-file/lugs.ts";
import type { Build } from "../../build-file/schema.ts";
import type { Settings } from "../../build-file/settings.ts";
import type { Wiring } from "../../wiring/nets.ts";
import type { Element } from "./live-elements.ts";

/** A step from lug to lug: along a wire, through a closed contact, or through a part. */
export interface Step {
  readonly kind: "wire" | "contact" | "through";
  readonly from: string;
  readonly to: string;
  /** Of the wire in the build file. */
  readonly wire?: number;
  readonly element?: Element;
  readonly cost: number;
}

export type LugGraph = ReadonlyMap<string, readonly Step[]>;

const WIRE_COST = 1;
/** A signal's way is through pots' tracks and other coils before it is through resistors and caps. */
const THROUGH_COST = { pot: 10, pickup: 20, resistor: 60, cap: 200 } as const;

function wireSteps(build: Build, canonical: (lug: string) => string): Step[] {
  return build.wires.map(({ from, to }, wire) => ({
    kind: "wire",
    from: canonical(from),
    to: canonical(to),
    wire,
    cost: WIRE_COST,
  }));
}

/** Contacts that the switches close, as chains along each group of lugs, the common first. */
export function closedContacts(build: Build, settings: Settings): { from: string; to: string }[] {
  return switchControls(build.parts).flatMap((control) => {
    const groups = control.table.positions[(settings.switches[control.name] ?? 1) - 1] ?? [];
    return groups.flatMap(([first, ...others]) =>
      others.map((other) => ({ from: contactLug(control.name, first!), to: contactLug(control.name, other) })),
    );
  });
}

function throughSteps(build: Build, elements: readonly Element[]): Step[] {
  return elements.map((element) => ({
    kind: "through",
    from: element.ends[0],
    to: element.ends[1],
    element,
    cost: THROUGH_COST[build.parts[element.part]!.kind as keyof typeof THROUGH_COST] ?? 1,
  }));
}

/** Every step there is in a setting, both ways, by the lug it starts at. */
export function lugGraph(build: Build, wiring: Wiring, settings: Settings, elements: readonly Element[]): LugGraph {
  const canonical = (lug: string) => wiring.lugs.nameAt(wiring.lugs.indexOf(lug));
  const contacts = closedContacts(build, settings).map((each): Step => ({ kind: "contact", ...each, cost: WIRE_COST }));
  const graph = new Map<string, Step[]>();
  for (const step of [...wireSteps(build, canonical), ...contacts, ...throughSteps(build, elements)]) {
    for (const each of [step, { ...step, from: step.to, to: step.from }]) {
      const steps = graph.get(each.from) ?? [];
      steps.push(each);
      graph.set(each.from, steps);
    }
  }
  return graph;
}

export interface Route {
  readonly cost: number;
  readonly steps: readonly Step[];
}

/** The cheapest way (Dijkstra 1959) from a lug to another that avoids some lugs and one element; undefined where there is none. */
export function cheapestRoute(
  graph: LugGraph,
  from: string,
  to: string,
  avoid: (lug: string) => boolean,
  without: Element,
): Route | undefined {
  const best = new Map<string, Route>([[from, { cost: 0, steps: [] }]]);
  const done = new Set<string>();
  for (;;) {
    const open = [...best].filter(([lug]) => !done.has(lug));
    if (open.length === 0) return undefined;
    const [lug, route] = open.reduce((a, b) => (b[1].cost < a[1].cost ? b : a));
    if (lug === to) return route;
    done.add(lug);
    for (const step of graph.get(lug) ?? []) {
      if (step.element === without || (avoid(step.to) && step.to !== to)) continue;
      const cost = route.cost + step.cost;
      if (cost < (best.get(step.to)?.cost ?? Number.POSITIVE_INFINITY))
        best.set(step.to, { cost, steps: [...route.steps, step] });
    }
  }
}
