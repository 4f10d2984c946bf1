import { contactLug } from "../../build-file/lug-names.ts";
import { listed } from "../../english.ts";
import { emfSign } from "../../response/pickup-elements.ts";
import type { AuditContext, State } from "./context.ts";
import { type Finding, finding } from "./finding.ts";
import { jackUnwired } from "./jack.ts";
import { coilLugs, leadsOf } from "./reach.ts";
import { shortingWires, tellingWires } from "./shorting-wires.ts";

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
  const isShorted = outer.length > 1 && outer.every((lug) => context.isGrounded(lug, state));
  return isShorted && !hasHotJoint(context, pickup, outer) ? outer : [];
}

/** Whether coils that share their two ends, as in parallel, aid each other at the one that is not on ground: that is the hot end. */
function hasHotJoint(context: AuditContext, pickup: string, grounded: readonly string[]): boolean {
  const pushes = context.sources.flatMap((source) => {
    if (source.pickup !== pickup) return [];
    const [start, finish] = coilLugs(context, pickup, source.coil).map((lug) => grounded.includes(lug));
    if (start === finish) return [];
    return [emfSign(source.spec) * (start ? 1 : -1)];
  });
  return pushes.length > 1 && pushes.every((push) => push === pushes[0]);
}

/** Hot lugs that lie on ground in a state: the tip, and the ends of pickups that are shorted out. */
function shortedLugs(context: AuditContext, state: State): string[] {
  const tip = `${context.jack}.tip`;
  const pickups = context.partsOf("pickup").flatMap(([name]) => shortedPickup(context, name, state));
  return context.isGrounded(tip, state) ? [tip, ...pickups] : pickups;
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
  const joined = states.flatMap(({ settings }) =>
    main.table.positions[(settings.switches[main.name] ?? 1) - 1]!.flat(),
  );
  return [...new Set(joined)]
    .map((local) => contactLug(main.name, local))
    .filter((lug) => context.neighbours(lug).length > 0);
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
  // Without a lug on ground nothing is shorted: a wire whose loss gives sound there only opens a way round by a tone or a case.
  const shorted = silent.filter((state) => shortedLugs(context, state).length > 0);
  const shorts = shortingWires(context, shorted);
  return [
    ...hotShorted(context, shorted, shorts),
    ...deadPositions(
      context,
      silent.filter((state) => !shorted.includes(state)),
    ),
  ];
}
