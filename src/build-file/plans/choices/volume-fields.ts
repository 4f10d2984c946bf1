import { capitalised } from "../../../english.ts";
import { layoutOf } from "../layouts.ts";
import type { Plan, PlanVolume } from "../plan-schema.ts";
import { type PlanControl, withOption } from "./field.ts";
import { potsOf } from "./pots.ts";
import { taperField, withTaper, withTrack } from "./track-fields.ts";

function volumesIn(plan: Plan): readonly PlanVolume[] {
  if (plan.volumes) return plan.volumes;
  const volume = plan.volume as PlanVolume;
  if (layoutOf(plan.layout).volumes === 1) return [volume];
  return [...layoutOf(plan.layout).pickups].reverse().map((pickup) => ({ ...volume, pickups: [pickup] }));
}

/** Volumes that are alike but for their pickup are written once. */
function withVolumes(plan: Plan, volumes: readonly PlanVolume[]): Plan {
  const bare = volumes.map(({ pickups: _, ...volume }) => volume);
  const isAlike = bare.every((volume) => JSON.stringify(volume) === JSON.stringify(bare[0]));
  const isUsual = !plan.volumes || volumes.every(({ pickups }, index) => pickups?.[0] === ["neck", "bridge"][index]);
  if (isAlike && isUsual) return withOption(withOption(plan, "volumes", undefined), "volume", bare[0]!);
  return withOption(withOption(plan, "volume", undefined), "volumes", [...volumes]);
}

export function volumeFields(plan: Plan): PlanControl[] {
  const volumes = volumesIn(plan);
  const words = potsOf(plan).map((pot) => capitalised(pot.words));
  const changed = (index: number, volume: PlanVolume) => withVolumes(plan, volumes.with(index, volume));
  return volumes.flatMap((volume, index): PlanControl[] => [
    {
      id: `volume${index + 1}.pot`,
      option: "volume",
      title: `${words[index]} pot`,
      kind: "quantity",
      dimension: "resistance",
      value: String(volume.pot),
      made: (value) => changed(index, withTrack(volume, value)),
    },
    taperField(`volume${index + 1}.taper`, `${words[index]} taper`, volume, (taper) =>
      changed(index, withTaper(volume, taper)),
    ),
  ]);
}
