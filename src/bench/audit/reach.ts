import { hasCoilLeads, localCoilLeads, trackLugs } from "../../build-file/lug-names.ts";
import { listed } from "../../english.ts";
import { magnitudeOf, PositionProbe } from "../../response/labels/position-probe.ts";
import type { AuditContext } from "./context.ts";
import { type Finding, finding } from "./finding.ts";

/** The lugs of one coil: start and finish, or a pickup's two leads where its coils are joined inside. */
export function coilLugs(context: AuditContext, pickup: string, coil: string): [string, string] {
  const part = context.build.parts[pickup];
  const [start, finish] = part?.kind === "pickup" && hasCoilLeads(part) ? localCoilLeads(coil) : ["ground", "hot"];
  return [`${pickup}.${start}`, `${pickup}.${finish}`];
}

/** The lugs of all coils of a pickup. */
export function leadsOf(context: AuditContext, name: string): string[] {
  return context.sources.filter(({ pickup }) => pickup === name).flatMap(({ coil }) => coilLugs(context, name, coil));
}

/** A coil this far under the strongest one with every dial halfway is not heard (−26 dB). */
const HEARD_ABOVE = 0.05;

/** Coils heard in some state, with the dials where the build sounds, or with all of them halfway, as a blend needs. */
function heardCoils(context: AuditContext): Set<number> {
  const heard = new Set<number>();
  const probe = new PositionProbe(context.build);
  for (const state of context.alive) {
    for (const coil of state.described.coils) heard.add(coil.source);
    const dials = Object.fromEntries(context.controls.pots.map((pot) => [pot, 5]));
    const strengths = probe.transfersIn({ ...state.settings, dials }).map(magnitudeOf);
    const strongest = Math.max(...strengths);
    for (const [source, strength] of strengths.entries()) {
      if (strongest > 0 && strength > HEARD_ABOVE * strongest) heard.add(source);
    }
  }
  return heard;
}

/** Pickups, and single coils of pickups, that are heard in no position of a build that does sound. */
export function silentPickups(context: AuditContext): Finding[] {
  if (context.alive.length === 0) return [];
  const heard = heardCoils(context);
  return context.partsOf("pickup").flatMap(([name]) => {
    const coils = context.sources
      .map((source, index) => ({ ...source, index }))
      .filter(({ pickup }) => pickup === name);
    const silent = coils.filter(({ index }) => !heard.has(index));
    const lugs = silent.flatMap(({ coil }) => coilLugs(context, name, coil));
    if (silent.length === 0) return [];
    if (silent.length === coils.length) {
      return finding({
        code: "pickup-silent",
        lugs,
        message: `The pickup ${name} has no way to the jack: it is heard in no position.`,
        remedy: "Check that one lead reaches the switch or volume, the other the ground, and that the two do not meet.",
      });
    }
    return finding({
      code: "coil-silent",
      lugs,
      message: `The ${silent[0]!.coil} coil of ${name} is heard in no position.`,
      remedy: "Join the coils in series, or tape the unused coil's leads off if only one coil is wanted.",
    });
  });
}

/** The nets that a part's lugs lie on in at least one state together with some other part, told apart. */
function usefulNets(context: AuditContext, lugs: readonly string[]): number {
  const counts = context.states.map((state) => {
    const own = new Set(lugs);
    const nets = lugs
      .filter((lug) => context.neighbours(lug, state).some((other) => !own.has(other.name)))
      .map((lug) => context.netOf(lug, state));
    return new Set(nets).size;
  });
  return Math.max(0, ...counts);
}

function unconnectedLugs(context: AuditContext): { name: string; lugs: string[] }[] {
  const twoEnded = [...context.partsOf("cap"), ...context.partsOf("resistor")].map(([name]) => ({
    name,
    lugs: [`${name}.a`, `${name}.b`],
  }));
  const pots = context.partsOf("pot").map(([name, pot]) => ({
    name,
    lugs: [...trackLugs(name), ...(pot.gangs ? trackLugs(name, 1) : [])],
  }));
  return [...twoEnded, ...pots].filter(({ lugs }) => usefulNets(context, lugs) < 2);
}

/** Caps, resistors, pots and switches that cannot do anything as wired, whatever the settings. */
export function unconnectedParts(context: AuditContext): Finding[] {
  const idle = unconnectedLugs(context);
  const switches = context.partsOf("switch").flatMap(([name]) => {
    const lugs = context.wiring.lugs.lugs.filter((lug) => lug.part === name).map((lug) => lug.name);
    return lugs.every((lug) => context.neighbours(lug).length === 0) ? [{ name, lugs }] : [];
  });
  return [...idle, ...switches].map(({ name, lugs }) => {
    const free = lugs.filter((lug) => context.neighbours(lug).length === 0);
    return finding({
      code: "part-unconnected",
      lugs,
      message:
        free.length > 0
          ? `${name} is not in the circuit: nothing is on ${listed(free)}.`
          : `${name} is not in the circuit: its lugs all meet.`,
      remedy: "Wire its free lugs, or take the part off the list.",
    });
  });
}
