import { meansOfShield } from "../means-of-shield.ts";
import type { Draft } from "./draft.ts";
import type { Layout } from "./layouts.ts";
import { placeOf } from "./places.ts";
import type { Tap } from "./plan-pickups.ts";
import type { Plan } from "./plan-schema.ts";

/** The ground point that every wire goes to: the volume's case, or a terminal of its own. */
export function groundPoint(plan: Plan, volumeName: string): string {
  return plan.grounds === "star" ? "star" : `${volumeName}.case`;
}

/** Bonds the pots' cases: in a chain from the volume's, or each to the star. */
function bondCases(draft: Draft, plan: Plan, pots: readonly string[]): void {
  for (const [index, pot] of pots.entries()) {
    if (plan.grounds === "star") draft.join(`${pot}.case`, "star");
    else if (index > 0) draft.join(`${pots[index - 1]}.case`, `${pot}.case`, "bus wire");
  }
}

function groundPickups(draft: Draft, taps: Iterable<Tap>, ground: string): void {
  for (const tap of taps) {
    draft.join(tap.ground, ground, tap.groundIsLead ? "lead" : "wire");
    const part = draft.parts[tap.pickup];
    const hasMetal = part?.kind === "pickup" && part.metal !== undefined && part.metal !== "none";
    if (hasMetal) draft.join(`${tap.pickup}.shield`, ground, meansOfShield(part));
  }
}

/** Grounds everything: cases, pickups and their metal, jack, spring claw and shielding foil. */
export function addGrounds(
  draft: Draft,
  plan: Plan,
  layout: Layout,
  pots: readonly string[],
  taps: Iterable<Tap>,
  ground: string,
): void {
  draft.part("claw", {
    kind: "terminal",
    role: "claw",
    label: "Spring claw (strings)",
    place: placeOf(layout, "claw"),
  });
  if (plan.shield)
    draft.part("shield", {
      kind: "terminal",
      role: "shield",
      label: "Shielding foil",
      place: placeOf(layout, "shield"),
    });
  if (plan.grounds === "star")
    draft.part("star", { kind: "terminal", role: "ground", label: "Ground point", place: placeOf(layout, "star") });
  bondCases(draft, plan, pots);
  groundPickups(draft, taps, ground);
  draft.join("jack.sleeve", ground);
  draft.join("claw", ground);
  if (plan.shield) draft.join("shield", ground);
}
