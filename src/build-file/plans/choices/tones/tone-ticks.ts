import { layoutOf } from "../../layouts.ts";
import type { Plan, PlanTone } from "../../plan-schema.ts";
import { withTones } from "../adapt.ts";
import type { PlanControl } from "../field.ts";

/** The knob works on one pickup more, or one less; all of them make it a master. */
function ticked(plan: Plan, index: number, pickup: string): Plan {
  const { pickups } = layoutOf(plan.layout);
  const all = pickups.length > 0 ? pickups : Object.keys(plan.pickups);
  const own = plan.tones[index]!.pickups ?? all;
  const next = own.includes(pickup) ? own.filter((each) => each !== pickup) : [...own, pickup];
  const isMaster = all.every((each) => next.includes(each));
  return withTones(
    plan,
    plan.tones.map((tone, other): PlanTone => {
      const { pickups: before, ...rest } = tone;
      if (other === index)
        return isMaster ? rest : { ...rest, pickups: [...all].reverse().filter((each) => next.includes(each)) };
      if (before === undefined || isMaster) return tone;
      // A pickup goes from one knob to the other; the one that is left with none takes those that no knob works on.
      const left = before.filter((each) => !next.includes(each));
      const free = [...all].reverse().filter((each) => !next.includes(each));
      return { ...rest, pickups: left.length > 0 ? left : free };
    }),
  );
}

export function ticksField(plan: Plan, index: number, words: string): PlanControl {
  const { pickups, selector, tones } = layoutOf(plan.layout);
  const all = selector === "none" ? Object.keys(plan.pickups) : [...pickups].reverse();
  const own = plan.tones[index]!.pickups ?? all;
  const fewer = tones.min < plan.tones.length ? "fewer tone knobs" : "a layout with fewer tones";
  const last = `a tone knob works on at least one pickup: tick another first, or choose ${fewer}`;
  return {
    id: `tone${index + 1}.pickups`,
    option: "tones",
    title: `${words} works on`,
    kind: "ticks",
    ticks: all.map((pickup) => ({
      value: pickup,
      label: pickup,
      on: own.includes(pickup),
      ...(own.length === 1 && own[0] === pickup ? { reason: last } : {}),
    })),
    made: (pickup) => ticked(plan, index, pickup),
  };
}
