import type { Draft } from "./draft.ts";
import type { Layout } from "./layouts.ts";
import { knownName, planFault } from "./plan-fault.ts";
import type { Tap } from "./plan-pickups.ts";
import type { Plan } from "./plan-schema.ts";
import type { PushPulls } from "./push-pulls.ts";
import type { SelectorLugs } from "./selector.ts";
import type { Volume } from "./volumes.ts";

export interface SignalParts {
  readonly plan: Plan;
  readonly layout: Layout;
  readonly lugs: SelectorLugs;
  readonly volumes: readonly Volume[];
}

function howOf(tap: Tap) {
  return tap.hotIsLead ? "lead" : "wire";
}

/** A switch from a pickup's throw of the selector to its common: up, the pickup is on whatever is selected. */
function wireAlwaysOn(draft: Draft, { plan, lugs }: SignalParts, pushPulls: PushPulls): void {
  const option = plan.alwaysOn;
  if (!option) return;
  const known = Object.keys(plan.pickups).filter((name) => name in lugs.inputs);
  if (known.length === 0) throw planFault("alwaysOn", "expected a layout with a selector switch");
  const pickup = knownName("alwaysOn.pickup", option.pickup, known, "pickup");
  const [pole] = pushPulls.poles("alwaysOn.by", option.by, 1, `adds the ${pickup}`);
  draft.join(lugs.inputs[pickup]!, pole!.common);
  draft.join(pole!.up, lugs.common);
}

/**
 * Wires the hot path from the taps to the jack's tip: selector then volume, or a volume for each pickup and then the
 * selector.
 * @returns the selector's lugs, with the one pickup's tap as common where there is no switch
 */
export function wireSignalPath(
  draft: Draft,
  parts: SignalParts,
  taps: ReadonlyMap<string, Tap>,
  pushPulls: PushPulls,
): SelectorLugs {
  const { lugs, volumes, layout } = parts;
  const neckFirst = [...taps.values()];
  if (layout.volumes === 2) {
    for (const tap of neckFirst) {
      const volume = volumes.find(({ pickup }) => pickup === tap.pickup)!;
      draft.join(tap.hot, volume.input, howOf(tap));
      draft.join(volume.output, lugs.inputs[tap.pickup]!);
    }
    wireAlwaysOn(draft, parts, pushPulls);
    draft.join(lugs.common, "jack.tip");
    return lugs;
  }
  const [volume] = volumes;
  if (layout.selector === "none") {
    const [tap] = neckFirst;
    if (parts.plan.alwaysOn) throw planFault("alwaysOn", "expected a layout with a selector switch");
    draft.join(tap!.hot, volume!.input, howOf(tap!));
    draft.join(volume!.output, "jack.tip");
    return { ...lugs, inputs: { [tap!.pickup]: volume!.input }, common: volume!.input };
  }
  for (const tap of neckFirst) draft.join(tap.hot, lugs.inputs[tap.pickup]!, howOf(tap));
  wireAlwaysOn(draft, parts, pushPulls);
  draft.join(lugs.common, volume!.input);
  draft.join(volume!.output, "jack.tip");
  return lugs;
}
