import type { Build } from "../../build-file/schema.ts";
import type { Settings } from "../../build-file/settings.ts";
import { solveTransfers } from "../../network/nodal-analysis.ts";
import { assemblePencil } from "../../network/pencil.ts";
import { CircuitMaker } from "../../response/circuit.ts";
import { REFERENCE_HZ } from "../../response/features.ts";
import { Wiring } from "../../wiring/nets.ts";
import { type AuditContext, type State, withDials } from "./context.ts";
import { earthyLugs } from "./jack.ts";

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
export function shortingWires(context: AuditContext, silent: readonly State[]): Map<number, State[]> {
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

/** The fewest wires found that between them explain the states, the one that explains most first. */
export function tellingWires(shorts: Map<number, State[]>): number[] {
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
