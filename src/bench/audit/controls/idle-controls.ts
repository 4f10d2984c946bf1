import { contactLug, localCoilLeads, trackLugs } from "../../../build-file/lug-names.ts";
import type { AuditContext, State } from "../context.ts";
import { type Finding, finding } from "../finding.ts";
import { unconnectedParts } from "../reach.ts";
import { phaseUnheard, turnsAlone } from "./idle-phase.ts";

function wired(context: AuditContext, lugs: readonly string[]): string[] {
  return lugs.filter((lug) => context.neighbours(lug).length > 0);
}

function actsSomewhere(context: AuditContext, control: string): boolean {
  return context.alive.some(({ settings }) => context.activity.isActive(control, settings));
}

/** Whether a silent state puts one of the lugs on ground by way of a switch: a short there hides what the control would do. */
function hiddenByShort(context: AuditContext, lugs: readonly string[]): boolean {
  const silent = context.states.filter((state) => !state.alive);
  return silent.some((state) => lugs.some((lug) => context.isGrounded(lug, state) && !context.isWiredToGround(lug)));
}

/** Whether any of the lugs lies in the signal's part of the wiring in some state, ground left aside. */
function meetsSignal(context: AuditContext, lugs: readonly string[]): boolean {
  return context.alive.some((state) => {
    const live = liveNets(context, state);
    return lugs.some((lug) => live.has(context.netOf(lug, state)));
  });
}

/** Nets, ground aside, that carry the signal: the jack's tip and the ends of every coil that sounds. */
export function liveNets(context: AuditContext, state: State): Set<number> {
  const table = context.wiring.lugs;
  const lugs = [`${context.jack}.tip`];
  for (const { pickup, coil } of state.described.coils) {
    const own = [...localCoilLeads(coil), "hot", "ground"].map((local) => `${pickup}.${local}`);
    lugs.push(...own.filter((lug) => table.find(lug) !== undefined));
  }
  const ground = context.netOf(`${context.jack}.sleeve`, state);
  const nets = new Set(lugs.map((lug) => context.netOf(lug, state)));
  nets.delete(ground);
  return nets;
}

/** Pots and switches whose moving changes nothing in any position that sounds. */
export function idleControls(context: AuditContext): Finding[] {
  if (context.alive.length === 0) return [];
  const reported = new Set(unconnectedParts(context).flatMap(({ lugs }) => lugs.map((lug) => lug.split(".")[0])));
  const pots = context.partsOf("pot").flatMap(([name, pot]) => {
    const lugs = trackLugs(name);
    if (reported.has(name) || actsSomewhere(context, name) || hiddenByShort(context, lugs)) return [];
    return [pot.role === "tone" && !meetsSignal(context, lugs) ? toneNeverReaches(name, lugs) : noEffect(name, lugs)];
  });
  const switches = context.controls.switches.flatMap(({ name, table }) => {
    const lugs = wired(
      context,
      table.lugs.map((local) => contactLug(name, local)),
    );
    const single = table.positions.length < 2;
    if (lugs.length === 0 || single || actsSomewhere(context, name)) return [];
    return [turnsAlone(context, name) ? phaseUnheard(name, lugs) : noEffect(name, lugs)];
  });
  return [...pots, ...switches];
}

function toneNeverReaches(name: string, lugs: readonly string[]): Finding {
  return finding({
    code: "tone-never-reaches",
    lugs,
    message: `${name} never reaches a pickup: none of its lugs meets the signal in any position.`,
    remedy:
      "Move its wire to a lug that the pickup's hot is on; where it hangs on the switch's second pole, join the two commons.",
  });
}

function noEffect(name: string, lugs: readonly string[]): Finding {
  return finding({
    code: "control-no-effect",
    lugs,
    message: `${name} does nothing: moving it changes no position.`,
    remedy: "Check that each of its wired lugs goes on to something: hot on one side, cap or ground on the other.",
  });
}

/** Positions that sound with no tone control, in a build that has one that works. */
export function positionsWithoutTone(context: AuditContext): Finding[] {
  const tones = context.controls.potsWithRole("tone").filter((tone) => actsSomewhere(context, tone));
  if (tones.length === 0) return [];
  const without = context.alive.filter(
    ({ settings }) => !tones.some((tone) => context.activity.isActive(tone, settings)),
  );
  if (without.length === 0) return [];
  return [
    finding({
      code: "position-without-tone",
      lugs: tones.flatMap((tone) => trackLugs(tone)),
      settings: context.settingsOf(without),
      message: `No tone control acts ${context.where(without)}.`,
      remedy:
        "Nothing to do if it is meant so; otherwise jumper a tone's lug on the switch to the pickup that lacks one.",
    }),
  ];
}
