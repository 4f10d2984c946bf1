import { type LayoutName, layoutOf } from "../../layouts.ts";
import type { Plan, PlanTone } from "../../plan-schema.ts";
import { potOf, USUAL_CAP } from "../pots.ts";

/** The tones of a plan without those beyond so many: what these work on goes to the last that stays, so that no pickup loses its tone. */
function mergedTo(most: number, tones: readonly PlanTone[]): PlanTone[] {
  if (tones.length <= most) return [...tones];
  const over = tones.slice(most - 1);
  const { pickups: _, ...last } = over[0]!;
  const isMaster = over.some(({ pickups }) => pickups === undefined);
  const pickups = [...new Set(over.flatMap((tone) => tone.pickups ?? []))];
  return [...tones.slice(0, most - 1), isMaster ? last : { ...last, pickups }];
}

/** The tones that a plan has under another layout. */
export function tonesFor(plan: Plan, layoutName: LayoutName): PlanTone[] {
  const { tones, pickups, selector } = layoutOf(layoutName);
  const hasPole = selector === "lever-5" || selector === "lever-3";
  const isPoleFree = hasPole && !plan.split.some(({ by }) => typeof by === "object" && "position" in by);
  const kept = mergedTo(tones.max, plan.tones).map(({ pickups: own, ...tone }): PlanTone => {
    const there = own?.filter((pickup) => pickups.includes(pickup)) ?? [];
    // Without a pole for the tones one knob cannot work on two pickups and leave a third alone.
    const isShared = there.length > 1 && !isPoleFree;
    return there.length === 0 || there.length === pickups.length || isShared ? tone : { ...tone, pickups: there };
  });
  const neckFirst = [...pickups].reverse();
  const shared = (names: readonly string[]) => (isPoleFree ? [...names] : names.slice(0, 1));
  const others = (own: readonly string[]) => neckFirst.filter((pickup) => !own.includes(pickup));
  if (kept.length < tones.min) {
    const { pickups: first = neckFirst.slice(0, 1), ...model } = kept[0] ?? { pot: potOf(plan), cap: USUAL_CAP };
    return [first, shared(others(first))].map((own) => ({ ...model, pickups: own }));
  }
  // A master beside a knob for one pickup would work on that one twice.
  if (kept.length !== 2 || kept.every(({ pickups: own }) => own) || kept.every(({ pickups: own }) => !own)) return kept;
  const rest = shared(others(kept.flatMap((tone) => tone.pickups ?? [])));
  return kept.map((tone) => (tone.pickups ? tone : { ...tone, pickups: rest }));
}
