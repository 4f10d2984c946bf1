import type { Draft } from "./draft.ts";
import { knownName, planFault } from "./plan-fault.ts";
import type { Tap } from "./plan-pickups.ts";
import type { Plan } from "./plan-schema.ts";
import type { PushPulls } from "./push-pulls.ts";

export interface AutomaticSplit {
  readonly pickup: string;
  readonly position: number;
  readonly link: string;
}

export interface OptionContext {
  readonly draft: Draft;
  readonly plan: Plan;
  readonly taps: Map<string, Tap>;
  readonly pushPulls: PushPulls;
  /** The lug to which a ground wire goes that has no nearer place. */
  readonly ground: string;
}

function tapNamed(context: OptionContext, path: string, name: string): Tap {
  return context.taps.get(knownName(path, name, [...context.taps.keys()], "pickup"))!;
}

function linkOf(context: OptionContext, path: string, name: string): { tap: Tap; link: readonly [string, string] } {
  const tap = tapNamed(context, path, name);
  if (tap.link) return { tap, link: tap.link };
  const part = context.draft.parts[name];
  const coils = part?.kind === "pickup" ? Object.keys(part.coils).length : 0;
  throw planFault(
    path,
    coils === 1 ? `${name} has one coil; expected a pickup with two` : `${name} has two conductors; expected four`,
  );
}

/** Whether a pickup's ground lead can leave ground, so that a split must go to that lead and not to a case. */
function groundMoves(plan: Plan, pickup: string): boolean {
  return plan.phase.some((option) => option.pickup === pickup) || plan.seriesLink?.pickups[0] === pickup;
}

function checkKeeps(context: OptionContext, path: string, pickup: string, keeps: string | undefined): void {
  const part = context.draft.parts[pickup];
  if (keeps === undefined || part?.kind !== "pickup") return;
  knownName(`${path}.keeps`, keeps, Object.keys(part.coils), `coil of ${pickup}`);
}

/** Splits: the joint between the coils goes to the ground side, which shorts the coil nearest ground. */
function applySplits(context: OptionContext): AutomaticSplit[] {
  const { draft, plan } = context;
  const automatic: AutomaticSplit[] = [];
  for (const [index, split] of plan.split.entries()) {
    const path = `split.${index}`;
    const { tap, link } = linkOf(context, `${path}.pickup`, split.pickup);
    checkKeeps(context, path, split.pickup, split.keeps);
    const { by } = split;
    if (typeof by === "object" && "position" in by) {
      automatic.push({ pickup: split.pickup, position: by.position, link: link[0] });
      continue;
    }
    const [pole] = context.pushPulls.poles(`${path}.by`, by, 1, `splits the ${split.pickup}`);
    draft.join(link[0], pole!.common, "lead");
    const toLead = groundMoves(plan, split.pickup);
    draft.join(pole!.up, toLead ? tap.ground : (pole!.potCase ?? context.ground));
  }
  return automatic;
}

/** Series down, parallel up: the joint opens, the upper coil's free lead goes to ground and the lower coil's to hot. */
function applySeriesParallel(context: OptionContext): Set<string> {
  const switched = new Set<string>();
  for (const [index, option] of context.plan.seriesParallel.entries()) {
    const path = `seriesParallel.${index}`;
    const { tap, link } = linkOf(context, `${path}.pickup`, option.pickup);
    if (context.plan.split.some((split) => split.pickup === option.pickup))
      throw planFault(`${path}.pickup`, `${option.pickup} is split already; expected one or the other`);
    const [a, b] = context.pushPulls.poles(
      `${path}.by`,
      option.by,
      2,
      `coils of the ${option.pickup} in series or parallel`,
    );
    context.draft.join(link[0], a!.common, "lead");
    context.draft.join(link[1], b!.common, "lead");
    context.draft.join(a!.down, b!.down, "jumper");
    context.draft.join(a!.up, tap.ground);
    context.draft.join(b!.up, tap.hot);
    switched.add(option.pickup);
  }
  return switched;
}

/** A crossing switch: up, the pickup's two ends trade places. */
function applyPhase(context: OptionContext): void {
  for (const [index, option] of context.plan.phase.entries()) {
    const tap = tapNamed(context, `phase.${index}.pickup`, option.pickup);
    const [a, b] = context.pushPulls.poles(
      `phase.${index}.by`,
      option.by,
      2,
      `turns the phase of the ${option.pickup}`,
    );
    const { draft } = context;
    draft.join(tap.hot, a!.down, "lead");
    draft.join(tap.ground, b!.down, "lead");
    draft.join(a!.down, b!.up, "jumper");
    draft.join(b!.down, a!.up, "jumper");
    Object.assign(tap, { hot: a!.common, ground: b!.common, hotIsLead: false, groundIsLead: false });
  }
}

/**
 * Two pickups in series, up: the first stands on the second instead of on ground, and the second's place at the selector
 * takes the pair, so that no position is dead and none shorts the first.
 */
function applySeriesLink(context: OptionContext): void {
  const option = context.plan.seriesLink;
  if (!option) return;
  const [firstName, secondName] = option.pickups;
  const first = tapNamed(context, "seriesLink.pickups.0", firstName);
  const second = tapNamed(context, "seriesLink.pickups.1", secondName);
  if (first === second) throw planFault("seriesLink.pickups.1", `is ${secondName} again; expected another pickup`);
  const [a, b] = context.pushPulls.poles("seriesLink.by", option.by, 2, `${firstName} and ${secondName} in series`);
  const { draft } = context;
  draft.join(first.ground, a!.common, first.groundIsLead ? "lead" : "wire");
  draft.join(second.hot, b!.down, second.hotIsLead ? "lead" : "wire");
  draft.join(b!.down, a!.up, "jumper");
  draft.join(first.hot, b!.up);
  Object.assign(first, { ground: a!.down, groundIsLead: false });
  Object.assign(second, { hot: b!.common, hotIsLead: false });
}

/**
 * Wires what happens between the coils and the selector; the taps move outwards accordingly.
 * @returns the splits that the selector has to make
 */
export function applyPickupOptions(context: OptionContext): AutomaticSplit[] {
  const automatic = applySplits(context);
  const switched = applySeriesParallel(context);
  for (const tap of context.taps.values()) {
    if (tap.link && !switched.has(tap.pickup)) context.draft.join(tap.link[0], tap.link[1], "lead");
  }
  applyPhase(context);
  applySeriesLink(context);
  return automatic;
}
