import type { Build } from "../../build-file/schema.ts";
import type { Settings } from "../../build-file/settings.ts";
import { assemblePencil, solveTransfers } from "../../network/nodal-analysis.ts";
import { CircuitMaker } from "../../response/circuit.ts";
import { REFERENCE_HZ } from "../../response/features.ts";
import { Wiring } from "../../wiring/nets.ts";
import { type AuditContext, type State, withDials } from "./context.ts";
import { type Finding, finding } from "./finding.ts";
import { earthyLugs, jackUnwired } from "./jack.ts";
import { leadsOf } from "./reach.ts";
import { listed } from "./states.ts";

/** A coil brought back by taking a wire away reaches the jack at least this strongly (−30 dB). */
const REVIVED_ABOVE = 0.03;

function loudest(maker: CircuitMaker, settings: Settings): number {
  const { network, outputNode } = maker.circuitIn(settings);
  const spectra = solveTransfers(assemblePencil(network), outputNode, Float64Array.of(REFERENCE_HZ));
  return Math.max(0, ...spectra.map(({ re, im }) => Math.hypot(re[0]!, im[0]!)));
}

function isRevived(build: Build, settings: Settings): boolean {
  const maker = new CircuitMaker(build);
  const halfway = withDials(settings, Object.fromEntries(Object.keys(settings.dials).map((pot) => [pot, 5])));
  return [settings, halfway].some((tried) => loudest(maker, tried) > REVIVED_ABOVE);
}

function withoutWire(build: Build, index: number): Build {
  return { ...build, wires: build.wires.filter((_, other) => other !== index) };
}

/** Whether the guard's metal is still grounded in a state of a build, as far as it was. */
function keepsMetalGrounded(context: AuditContext, without: Build, state: State): boolean {
  const { lugs } = context.wiring;
  const { netOfLug } = new Wiring(without).netsIn(state.settings);
  const sleeve = netOfLug[lugs.indexOf(`${context.jack}.sleeve`)];
  const grounded = earthyLugs(context.build).filter((lug) => context.isGrounded(lug, state));
  return grounded.every((lug) => netOfLug[lugs.indexOf(lug)] === sleeve);
}

/**
 * For each silent state, the wires on ground whose removal brings sound back: only those that leave the metal grounded,
 * where there are such, since a case's own ground wire may carry the short as well.
 */
function shortingWires(context: AuditContext, silent: readonly State[]): Map<number, State[]> {
  const found = new Map<number, State[]>();
  let trials = 0;
  for (const state of silent) {
    const reviving = context.build.wires.flatMap((wire, index) => {
      if (!context.isGrounded(wire.from, state) || ++trials > context.effort.maxTrials) return [];
      const without = withoutWire(context.build, index);
      return isRevived(without, state.settings) ? [{ index, tidy: keepsMetalGrounded(context, without, state) }] : [];
    });
    const tidy = reviving.filter((wire) => wire.tidy);
    for (const { index } of tidy.length > 0 ? tidy : reviving) {
      found.set(index, [...(found.get(index) ?? []), state]);
    }
  }
  return found;
}

/** A switch of its own, not the main one, that silences the same one of its positions whatever the others do. */
function muteSwitch(context: AuditContext, silent: readonly State[]): { lug: string; position: number } | undefined {
  for (const control of context.controls.switches) {
    if (control.onShaft || control === context.controls.main || control.table.positions.length !== 2) continue;
    for (const position of [1, 2]) {
      const there = context.states.filter((state) => state.settings.switches[control.name] === position);
      const isMute = there.length === silent.length && there.every((state) => silent.includes(state));
      if (isMute) return { lug: `${control.part}.${control.table.lugs[0]}`, position };
    }
  }
  return undefined;
}

/** The lugs where a pickup's coils end, not counting joints between its own coils, that are on ground in a state. */
function shortedPickup(context: AuditContext, pickup: string, state: State): string[] {
  const lugs = leadsOf(context, pickup).filter((lug, index, all) => all.indexOf(lug) === index);
  const nets = lugs.map((lug) => context.netOf(lug, state));
  const outer = lugs.filter(
    (lug, i) => context.isGrounded(lug, state) || nets.indexOf(nets[i]!) === nets.lastIndexOf(nets[i]!),
  );
  return outer.length > 1 && outer.every((lug) => context.isGrounded(lug, state)) ? outer : [];
}

/** Hot lugs that lie on ground in a state: the tip, and the ends of pickups that are shorted out. */
function shortedLugs(context: AuditContext, state: State): string[] {
  const tip = `${context.jack}.tip`;
  const pickups = context.partsOf("pickup").flatMap(([name]) => shortedPickup(context, name, state));
  return context.isGrounded(tip, state) ? [tip, ...pickups] : pickups;
}

/** The fewest wires found that between them explain the states, the one that explains most first. */
function tellingWires(shorts: Map<number, State[]>): number[] {
  const chosen: number[] = [];
  const open = new Set([...shorts.values()].flat());
  while (open.size > 0) {
    const gain = ([, states]: [number, State[]]) => states.filter((state) => open.has(state)).length;
    const [index, states] = [...shorts].reduce((best, next) => (gain(next) > gain(best) ? next : best));
    chosen.push(index);
    for (const state of states) open.delete(state);
  }
  return chosen;
}

/** One finding for all states where the hot lies on ground, with the wires that do it where single wires do. */
function hotShorted(context: AuditContext, states: readonly State[], shorts: Map<number, State[]>): Finding[] {
  if (states.length === 0) return [];
  const wires = tellingWires(shorts).map((index) => context.build.wires[index]!);
  const places = wires.map(({ from, to }) => `the wire from ${from} to ${to}`);
  const lugs = wires.flatMap(({ from, to }) => [from, to]);
  return [
    finding({
      code: "hot-shorted",
      lugs: lugs.length > 0 ? lugs : states.flatMap((state) => shortedLugs(context, state)),
      settings: context.settingsOf(states),
      message: `The hot is shorted to ground ${context.where(states)}${places.length > 0 ? ` by ${listed(places)}` : ""}.`,
      remedy:
        places.length > 0
          ? `Take away ${listed(places)}, or look for a whisker of braid or a bent lug there.`
          : "Part the joints on that point one by one until the sound comes back.",
    }),
  ];
}

function deadPositions(context: AuditContext, silent: readonly State[]): Finding[] {
  if (silent.length === 0) return [];
  const everywhere = silent.length === context.states.length;
  return [
    finding({
      code: "dead-position",
      lugs: [`${context.jack}.tip`, ...contactLugs(context, silent)],
      settings: context.settingsOf(silent),
      message: everywhere
        ? "No coil reaches the jack in any position."
        : `No coil reaches the jack ${context.where(silent)}.`,
      remedy: everywhere
        ? "Follow the hot from a pickup to the jack's tip, and the ground from the pickup to the sleeve: one of the two has a gap."
        : "Follow the hot from the pickup meant there through the switch: its lug, the common and the wire on from it; and the pickup's ground.",
    }),
  ];
}

/** The main switch's wired lugs that its contacts join in these states. */
function contactLugs(context: AuditContext, states: readonly State[]): string[] {
  const { main } = context.controls;
  if (!main) return [];
  const prefix = main.onShaft ? `${main.part}.s.` : `${main.part}.`;
  const joined = states.flatMap(({ settings }) =>
    main.table.positions[(settings.switches[main.name] ?? 1) - 1]!.flat(),
  );
  return [...new Set(joined)].map((lug) => `${prefix}${lug}`).filter((lug) => context.neighbours(lug).length > 0);
}

/** Silent states: shorts that a wire explains, a mute, and positions that are dead for want of a way through. */
export function silence(context: AuditContext): Finding[] {
  const silent = context.states.filter((state) => !state.alive);
  if (silent.length === 0 || jackUnwired(context).length > 0) return [];
  const mute = muteSwitch(context, silent);
  if (mute) {
    return [
      finding({
        code: "switch-mutes",
        lugs: [mute.lug],
        settings: context.settingsOf(silent),
        message: `Everything is silent ${context.where(silent)}.`,
        remedy: "Nothing to do where a mute is meant; otherwise look for a lug of this switch that grounds the hot.",
      }),
    ];
  }
  const shorts = shortingWires(context, silent);
  const explained = new Set([...shorts.values()].flat());
  const shorted = silent.filter((state) => explained.has(state) || shortedLugs(context, state).length > 0);
  return [
    ...hotShorted(context, shorted, shorts),
    ...deadPositions(
      context,
      silent.filter((state) => !shorted.includes(state)),
    ),
  ];
}
