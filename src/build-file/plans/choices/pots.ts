import { layoutOf } from "../layouts.ts";
import type { Plan, PlanVolume } from "../plan-schema.ts";

/** A plan's pots in their order, by the names that options use, with a person's words. */
export function potsOf(plan: Plan): readonly { readonly name: string; readonly words: string }[] {
  const layout = layoutOf(plan.layout);
  const owners = plan.volumes?.map(({ pickups }) => pickups?.[0] ?? "") ?? [...layout.pickups].reverse();
  const volumes =
    layout.volumes === 1
      ? [{ name: "volume", words: "volume" }]
      : owners.map((owner, index) => ({ name: `volume${index + 1}`, words: `${owner} volume` }));
  const tones =
    plan.tones.length === 1
      ? [{ name: "tone", words: "tone" }]
      : plan.tones.map((_, index) => ({ name: `tone${index + 1}`, words: index === 0 ? "upper tone" : "lower tone" }));
  return [...volumes, ...tones];
}

/** The names of a plan's tones among its pots. */
export function toneNamesOf(plan: Plan): readonly string[] {
  return potsOf(plan)
    .map(({ name }) => name)
    .filter((name) => name.startsWith("tone"));
}

export const USUAL_CAP = "22n";

/** The track resistance of a plan's first volume, as written. */
export function potOf(plan: Plan): PlanVolume["pot"] {
  const first = (plan.volume as PlanVolume | undefined) ?? plan.volumes?.[0];
  return first?.pot ?? "250k";
}
