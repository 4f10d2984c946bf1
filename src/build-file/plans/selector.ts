import type { Draft } from "./draft.ts";
import type { Layout, Selector } from "./layouts.ts";
import type { AutomaticSplit } from "./pickup-options.ts";
import { placeOf } from "./places.ts";
import { planFault } from "./plan-fault.ts";
import type { Plan } from "./plan-schema.ts";

/** The lugs of a wired selector. */
export interface SelectorLugs {
  /** Where each pickup's hot side goes. */
  readonly inputs: Readonly<Record<string, string>>;
  /** The selected signal. */
  readonly common: string;
  /** A second pole that can pick tone controls: where a pickup's tone goes, and its common. */
  readonly tonePole: { readonly inputs: Readonly<Record<string, string>>; readonly common: string } | undefined;
}

const LABELS: Readonly<Record<Exclude<Selector, "none">, string>> = {
  "lever-5": "Five-position lever",
  "lever-3": "Three-position lever",
  "lever-3-pair": "Three-position lever",
  "toggle-3": "Three-position toggle",
};

const THROW_OF: Readonly<Record<string, number>> = { bridge: 1, middle: 2, neck: 3 };

function throwsOn(part: string, pole: "A" | "B"): Record<string, string> {
  return Object.fromEntries(Object.entries(THROW_OF).map(([pickup, number]) => [pickup, `${part}.${pole}${number}`]));
}

/** Two pickups on a lever: each pole carries one of them and keeps it on in the middle position. */
function leverPair(draft: Draft): SelectorLugs {
  draft.join("lever.A1", "lever.A2", "jumper");
  draft.join("lever.B2", "lever.B3", "jumper");
  draft.join("lever.A0", "lever.B0", "jumper");
  return { inputs: { bridge: "lever.A1", neck: "lever.B3" }, common: "lever.A0", tonePole: undefined };
}

/** Draws up the selector switch. With one pickup there is none, and the pickup itself is the common. */
export function addSelector(draft: Draft, layout: Layout, onlyPickup: string): SelectorLugs {
  if (layout.selector === "none") return { inputs: {}, common: onlyPickup, tonePole: undefined };
  const name = layout.selector === "toggle-3" ? "toggle" : "lever";
  const type = layout.selector === "lever-3-pair" ? "lever-3" : layout.selector;
  draft.part(name, { kind: "switch", type, label: LABELS[layout.selector], place: placeOf(layout, "selector") });
  if (layout.selector === "lever-3-pair") return leverPair(draft);
  if (layout.selector === "toggle-3")
    return { inputs: { bridge: "toggle.A1", neck: "toggle.A2" }, common: "toggle.A0", tonePole: undefined };
  return {
    inputs: throwsOn(name, "A"),
    common: "lever.A0",
    tonePole: { inputs: throwsOn(name, "B"), common: "lever.B0" },
  };
}

const AUTOMATIC_POSITIONS: Readonly<Record<string, number>> = { bridge: 2, neck: 4 };

/**
 * Automatic splits on a five-position lever: the second pole's middle throw goes to ground and its outer throws to the
 * coil joints, so that only the two-pickup positions ground them. The pole is then taken.
 */
export function applyAutomaticSplits(
  draft: Draft,
  plan: Plan,
  layout: Layout,
  lugs: SelectorLugs,
  splits: readonly AutomaticSplit[],
  ground: string,
): SelectorLugs {
  if (splits.length === 0) return lugs;
  if (layout.selector !== "lever-5" || !lugs.tonePole)
    throw planFault("split", `splits by position, which needs a five-position lever; ${plan.layout} has none`);
  for (const { pickup, position, link } of splits) {
    const expected = AUTOMATIC_POSITIONS[pickup];
    if (position !== expected)
      throw planFault(
        "split",
        `splits ${pickup} in position ${position}; a lever can split the bridge pickup in position 2 and the neck pickup in position 4`,
      );
    const moved = plan.phase.some((option) => option.pickup === pickup) || plan.seriesLink?.pickups.includes(pickup);
    if (moved)
      throw planFault("split", `splits ${pickup} by position, but its ground lead is switched; expected a push-pull`);
    draft.join(link, lugs.tonePole.inputs[pickup]!, "lead");
  }
  const { middle } = lugs.tonePole.inputs;
  draft.join(middle!, ground);
  return { ...lugs, tonePole: undefined };
}
