import { showQuantity } from "../../build-file/show-quantity.ts";
import { DirectCurrent } from "../../network/direct-current.ts";
import type { Network } from "../../network/elements.ts";
import { CircuitMaker } from "../../response/circuit.ts";
import { type AuditContext, type State, withDials } from "./context.ts";
import { toneLugsThatTouch } from "./controls/tone-lugs.ts";
import { backwardTones, backwardVolumes } from "./controls/volumes.ts";
import { type Finding, finding } from "./finding.ts";
import { coilLugs, leadsOf } from "./reach.ts";
import { unusualPots } from "./values/pot-values.ts";

/** Caps from here up pass the treble that loading decides; smaller ones do not load it (common practice, no source). */
const PASSES_FARADS = 5e-9;
/** What such pickups usually work into: a volume and a tone in parallel, or a volume alone (common practice, no source). */
const USUAL = { small: { volume: 250e3, pair: 125e3 }, large: { volume: 500e3, pair: 250e3 } };
/** Single coils beyond this inductance are wound for the larger pots. */
const LARGE_COIL_HENRIES = 5;
const FAR = 1.8;
/** A no-load pot counts with its track in circuit. */
const JUST_UNDER_TEN = 9.99;

/** The network as treble sees it, without its coils: large caps closed, small ones open. */
function trebleLoad({ nodeCount, elements }: Network): Network {
  return {
    nodeCount,
    elements: elements.flatMap((element) => {
      if (element.kind === "branch") return [];
      if (element.kind === "resistor") return [element];
      const { a, b, farads } = element;
      return farads >= PASSES_FARADS ? [{ kind: "resistor" as const, a, b, ohms: 0 }] : [];
    }),
    mutuals: [],
    sourceCount: 0,
  };
}

interface Load {
  readonly ohms: number;
  readonly usual: number;
}

/** What one pickup, sounding alone, works into; undefined where nothing loads it. */
function loadOn(context: AuditContext, maker: CircuitMaker, state: State): Load | undefined {
  const dials = Object.fromEntries(
    context
      .partsOf("pot")
      .map(([name, { noLoad }]) => [name, noLoad ? JUST_UNDER_TEN : (state.settings.dials[name] ?? 10)]),
  );
  const settings = withDials(state.settings, dials);
  const circuit = maker.circuitIn(settings, { withCableAndLoad: false });
  const { coils } = state.described;
  const nodes = coils.flatMap(({ pickup, coil }) =>
    coilLugs(context, pickup, coil).map((lug) => circuit.nodeOfLug(context.index(lug))),
  );
  const hot =
    nodes.find((node) => node !== 0 && nodes.filter((other) => other === node).length === 1) ??
    nodes.find((node) => node !== 0);
  if (hot === undefined) return undefined;
  const ohms = new DirectCurrent(trebleLoad(circuit.network)).resistanceBetween(hot, 0);
  if (ohms === null) return undefined;
  // A split pickup still belongs to the pots of the whole one.
  const own = context.sources.filter(({ pickup }) => pickup === coils[0]!.pickup);
  const isLarge = own.length > 1 || own[0]!.spec.inductance >= LARGE_COIL_HENRIES;
  const usual = isLarge ? USUAL.large : USUAL.small;
  const toned = context.controls.potsWithRole("tone").some((tone) => context.activity.isActive(tone, settings));
  return { ohms, usual: toned ? usual.pair : usual.volume };
}

const shown = (ohms: number) => showQuantity(ohms, "resistance", 3);

/** Pickups, each where it sounds alone, that the pots load far more or less than usual; pots that are miswired, or a slip, come first. */
export function unusualLoads(context: AuditContext): Finding[] {
  const comesFirst = [backwardVolumes, backwardTones, toneLugsThatTouch, unusualPots];
  if (comesFirst.some((rule) => rule(context).length > 0)) return [];
  const maker = new CircuitMaker(context.build);
  return context.partsOf("pickup").flatMap(([name]) => {
    const alone = context.alive.filter(
      ({ described }) => described.pickups.length === 1 && described.pickups[0]!.pickup === name,
    );
    const odd = alone.flatMap((state) => {
      const load = loadOn(context, maker, state);
      return load && Math.max(load.ohms / load.usual, load.usual / load.ohms) >= FAR ? [{ state, ...load }] : [];
    });
    const [first] = odd;
    if (!first) return [];
    const states = odd.map(({ state }) => state);
    const heavy = first.ohms < first.usual;
    return finding({
      code: "load-unusual",
      lugs: leadsOf(context, name),
      settings: context.settingsOf(states),
      message: `${name} works into ${shown(first.ohms)} ${context.where(states)}; such a pickup usually sees about ${shown(first.usual)}. Expect it ${heavy ? "duller" : "brighter"}.`,
      remedy: heavy
        ? "If it sounds muddy, fit pots of the next larger value, or a no-load tone."
        : "If it sounds thin, put a resistor of the pot's own value from its hot to ground, or fit smaller pots.",
    });
  });
}
