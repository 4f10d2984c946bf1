import { parseSettings, type RawSettings } from "../../build-file/settings.ts";
import type { SettingDescription } from "../../response/labels/description.ts";
import { describeSetting } from "../../response/labels/setting-describer.ts";
import { Wiring } from "../../wiring/nets.ts";
import type { Reading } from "../state/reading.ts";
import { type Element, elementsOf, type LiveElements, liveElements } from "./live-elements.ts";
import { cheapestRoute, type LugGraph, lugGraph, type Route, type Step } from "./lug-graph.ts";

export interface LivePath {
  readonly description: SettingDescription;
  readonly live: LiveElements;
  readonly wiring: Wiring;
  /** From coils to the tip, each step in the signal's direction. */
  readonly hot: readonly Step[];
  /** From coils to the sleeve. */
  readonly back: readonly Step[];
  /** The way of each coil that sounds, lug by lug, for reading. */
  readonly inWords: readonly (readonly string[])[];
}

interface CoilRoutes {
  readonly hot: Route;
  readonly back: Route;
}

function routesOf(coil: Element, graph: LugGraph, live: LiveElements, jack: string): CoilRoutes | undefined {
  const onTip = (lug: string) => live.netOf(lug) === live.tipNet;
  const onSleeve = (lug: string) => live.netOf(lug) === live.sleeveNet;
  const ways = [coil.ends, [coil.ends[1], coil.ends[0]] as const].flatMap(([cold, hotEnd]) => {
    const hot = cheapestRoute(graph, hotEnd, `${jack}.tip`, onSleeve, coil);
    const back = cheapestRoute(graph, cold, `${jack}.sleeve`, onTip, coil);
    return hot && back ? [{ hot, back }] : [];
  });
  return ways.sort((a, b) => a.hot.cost + a.back.cost - b.hot.cost - b.back.cost)[0];
}

function isSounding(element: Element, description: SettingDescription, build: Reading["build"]): boolean {
  if (element.coil === undefined) return false;
  const part = build.parts[element.part]!;
  const joinedInside = part.kind === "pickup" && part.conductors === 2;
  return description.coils.some(
    ({ pickup, coil }) => pickup === element.part && (joinedInside || coil === element.coil),
  );
}

function words(coil: Element, { hot }: CoilRoutes): string[] {
  const end = hot.steps[0]?.from ?? "";
  return [`${coil.part}${coil.coil ? ` (${coil.coil})` : ""}`, end, ...hot.steps.map((step) => step.to)];
}

/** What is alive in a setting, and the ways that the signal takes. */
export function findLivePath({ build, controls }: Reading, raw: RawSettings): LivePath {
  const settings = parseSettings(controls, raw);
  const wiring = new Wiring(build);
  const description = describeSetting(build, settings);
  const live = liveElements(build, wiring, settings);
  const jack = Object.entries(build.parts).find(([, part]) => part.kind === "jack")![0];
  const elements = elementsOf(build).filter(({ ends: [a, b] }) => live.netOf(a) !== live.netOf(b));
  const graph = lugGraph(build, wiring, settings, elements);
  const found = elements
    .filter((element) => isSounding(element, description, build))
    .flatMap((coil) => {
      const routes = routesOf(coil, graph, live, jack);
      return routes ? [{ coil, routes }] : [];
    });
  return {
    description,
    live,
    wiring,
    hot: found.flatMap(({ routes }) => routes.hot.steps),
    back: found.flatMap(({ routes }) => routes.back.steps),
    inWords: found.map(({ coil, routes }) => words(coil, routes)),
  };
}
