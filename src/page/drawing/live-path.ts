import { BoundedMap } from "../../bounded-map.ts";
import type { Build } from "../../build-file/schema.ts";
import type { Settings } from "../../build-file/settings.ts";
import type { SettingDescription } from "../../response/labels/description.ts";
import type { SettingDescriber } from "../../response/labels/setting-describer.ts";
import { Wiring } from "../../wiring/nets.ts";
import { type Element, elementsOf, type LiveElements, liveElements } from "./live-elements.ts";
import { cheapestRoute, type LugGraph, lugGraph, type Route, type Step } from "./lug-graph.ts";

export interface LivePath {
  /** Another one for every other way that the signal takes: while it stays, so does the drawing. */
  readonly shape: number;
  readonly description: SettingDescription;
  readonly live: LiveElements;
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
  const onTip = (lug: string) => live.nets.get(lug) === live.tipNet;
  const onSleeve = (lug: string) => live.nets.get(lug) === live.sleeveNet;
  const ways = [coil.ends, [coil.ends[1], coil.ends[0]] as const].flatMap(([cold, hotEnd]) => {
    const hot = cheapestRoute(graph, hotEnd, `${jack}.tip`, onSleeve, coil);
    const back = cheapestRoute(graph, cold, `${jack}.sleeve`, onTip, coil);
    return hot && back ? [{ hot, back }] : [];
  });
  return ways.sort((a, b) => a.hot.cost + a.back.cost - b.hot.cost - b.back.cost)[0];
}

function isSounding(element: Element, description: SettingDescription, build: Build): boolean {
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

function findPath(
  build: Build,
  wiring: Wiring,
  description: SettingDescription,
  settings: Settings,
): Omit<LivePath, "shape"> {
  const live = liveElements(build, wiring, settings);
  const jack = Object.entries(build.parts).find(([, part]) => part.kind === "jack")![0];
  const elements = elementsOf(build).filter(({ ends: [a, b] }) => live.nets.get(a) !== live.nets.get(b));
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
    hot: found.flatMap(({ routes }) => routes.hot.steps),
    back: found.flatMap(({ routes }) => routes.back.steps),
    inWords: found.map(({ coil, routes }) => words(coil, routes)),
  };
}

/** Five positions by a few push-pulls, many times over. */
const MAX_PATHS = 256;

let lastShape = 0;

/** Finds what is alive in settings of one build, and the ways that the signal takes. */
export class LivePathFinder {
  readonly #build: Build;
  readonly #describer: SettingDescriber;
  readonly #wiring: Wiring;
  /** By the switches: dials alone move the signal's way only where they make coils sound or silent. */
  readonly #paths = new BoundedMap<string, LivePath>(MAX_PATHS);

  constructor(build: Build, describer: SettingDescriber) {
    this.#build = build;
    this.#describer = describer;
    this.#wiring = new Wiring(build);
  }

  find(settings: Settings): LivePath {
    const description = this.#describer.describe(settings);
    const key = JSON.stringify(settings.switches);
    const known = this.#paths.get(key);
    if (known?.description === description) return known;
    lastShape += 1;
    const path = { shape: lastShape, ...findPath(this.#build, this.#wiring, description, settings) };
    this.#paths.set(key, path);
    return path;
  }
}
