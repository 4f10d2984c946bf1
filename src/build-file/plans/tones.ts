import type { Draft } from "./draft.ts";
import type { Layout } from "./layouts.ts";
import { beside, type Place, placeOf } from "./places.ts";
import { knownName, planFault } from "./plan-fault.ts";
import type { Plan, PlanTone } from "./plan-schema.ts";
import type { SelectorLugs } from "./selector.ts";
import { potPart, type Volume } from "./volumes.ts";

export interface Tone {
  readonly name: string;
  readonly spec: PlanTone;
  /** Empty for a master tone. */
  readonly pickups: readonly string[];
}

function toneNames(count: number): string[] {
  return count === 1 ? ["tone"] : Array.from({ length: count }, (_, index) => `tone${index + 1}`);
}

function checkTones(plan: Plan, layout: Layout, pickups: readonly string[]): void {
  const { min, max } = layout.tones;
  const count = plan.tones.length;
  if (count < min || count > max) {
    const expected = min === max ? `${min}` : `${min} to ${max}`;
    throw planFault("tones", `has ${count}; ${plan.layout} takes ${expected}`);
  }
  const owner = new Map<string, number>();
  for (const [index, tone] of plan.tones.entries()) {
    for (const pickup of tone.pickups ?? []) {
      knownName(`tones.${index}.pickups`, pickup, pickups, "pickup");
      if (owner.has(pickup))
        throw planFault(`tones.${index}.pickups`, `${pickup} is already on tone ${owner.get(pickup)! + 1}`);
      owner.set(pickup, index);
    }
    const caps = [tone.cap, plan.sharedCap].filter((cap) => cap !== undefined).length;
    if (caps !== 1)
      throw planFault(`tones.${index}.cap`, "expected either a `cap` of its own or the plan's `sharedCap`");
  }
  if (plan.sharedCap !== undefined && count < 2) throw planFault("sharedCap", "expected two tones to share it");
}

function labelOf(tone: Tone): string {
  return tone.pickups.length === 0 ? "Tone" : `Tone: ${tone.pickups.join(" and ")}`;
}

/** Draws up the tone pots. */
export function addTones(draft: Draft, plan: Plan, layout: Layout, pickups: readonly string[]): Tone[] {
  checkTones(plan, layout, pickups);
  const names = toneNames(plan.tones.length);
  return plan.tones.map((spec, index) => {
    const all = pickups.every((pickup) => spec.pickups?.includes(pickup));
    const tone = { name: names[index]!, spec, pickups: all ? [] : (spec.pickups ?? []) };
    draft.part(tone.name, potPart("tone", labelOf(tone), placeOf(layout, tone.name), spec));
    return tone;
  });
}

/** Caps from the wiper to the case: one a tone, or one for all with the wipers joined. */
export function addToneCaps(draft: Draft, plan: Plan, tones: readonly Tone[]): void {
  const shared = plan.sharedCap;
  for (const [index, tone] of tones.entries()) {
    if (shared !== undefined && index > 0) {
      draft.join(`${tones[index - 1]!.name}.2`, `${tone.name}.2`);
      continue;
    }
    const name = shared !== undefined || tones.length === 1 ? "cap" : `cap${index + 1}`;
    const capacitance = shared ?? tone.spec.cap!;
    const place = beside(draft.pot(tone.name)!.place as Place, { x: 0.012, y: 0 });
    draft.part(name, { kind: "cap", label: "Tone cap", capacitance, place });
    draft.join(`${name}.a`, `${tone.name}.2`, "leg");
    draft.join(`${name}.b`, `${tone.name}.case`, "leg");
  }
}

interface Feed {
  readonly plan: Plan;
  readonly layout: Layout;
  readonly lugs: SelectorLugs;
  readonly volumes: readonly Volume[];
}

/** A tone of one volume's pickup hangs on that volume. */
function feedByVolume(draft: Draft, { plan, lugs, volumes }: Feed, tones: readonly Tone[]): void {
  for (const [index, tone] of tones.entries()) {
    if (tone.pickups.length === 0) {
      draft.join(lugs.common, `${tone.name}.1`);
      continue;
    }
    const own = volumes.find((volume) => volume.pickup === tone.pickups[0]);
    if (!own) throw planFault(`tones.${index}.pickups`, "expected a pickup with a volume");
    draft.join(plan.toneFeed === "before-volume" ? own.input : own.output, `${tone.name}.1`);
  }
}

/** A lever's second pole picks the tones, with its common on the signal. */
function feedByPole(draft: Draft, feed: Feed, tones: readonly Tone[]): void {
  const pole = feed.lugs.tonePole!;
  const [volume] = feed.volumes;
  if (feed.plan.toneFeed === "before-volume") draft.join(feed.lugs.common, pole.common, "jumper");
  else draft.join(pole.common, volume!.output);
  for (const tone of tones) {
    const [first, ...others] = tone.pickups.map((pickup) => pole.inputs[pickup]!);
    draft.join(first!, `${tone.name}.1`);
    for (const other of others) draft.join(first!, other, "jumper");
  }
}

/** With no pole to spare, a tone sits on its pickup's own throw of the selector. */
function feedAtPickups(draft: Draft, { plan, layout, lugs }: Feed, tones: readonly Tone[]): void {
  for (const tone of tones) {
    const path = `tones.${plan.tones.indexOf(tone.spec)}`;
    const [pickup, ...others] = tone.pickups;
    if (others.length > 0)
      throw planFault(
        `${path}.pickups`,
        `joins ${tone.pickups.join(" and ")} for good, since no switch pole is free to part them; expected one pickup, or none for a master tone`,
      );
    if (plan.toneFeed === "after-volume")
      throw planFault(
        "toneFeed",
        `${layout.title.toLowerCase()}: no switch pole is free to pick tones after the volume`,
      );
    draft.join(lugs.inputs[pickup!]!, `${tone.name}.1`);
  }
}

/** Brings the signal to the tone pots. */
export function feedTones(draft: Draft, feed: Feed, tones: readonly Tone[]): void {
  if (feed.layout.volumes === 2) {
    feedByVolume(draft, feed, tones);
    return;
  }
  const [volume] = feed.volumes;
  const masters = tones.filter((tone) => tone.pickups.length === 0);
  for (const tone of masters)
    draft.join(feed.plan.toneFeed === "before-volume" ? volume!.input : volume!.output, `${tone.name}.1`);
  const own = tones.filter((tone) => tone.pickups.length > 0);
  if (own.length === 0) return;
  if (feed.lugs.tonePole) feedByPole(draft, feed, own);
  else feedAtPickups(draft, feed, own);
}
