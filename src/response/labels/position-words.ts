import type { CoilSource } from "../pickup-elements.ts";
import type { SettingDescription, SoundingPickup } from "./description.ts";
import type { Arrangement } from "./position-relations.ts";

/** "bridge", "bridge (screw coil)", "bridge (coils in parallel)". */
function nameOf(pickup: SoundingPickup, sources: readonly CoilSource[]): string {
  const coilCount = sources.filter((source) => source.pickup === pickup.pickup).length;
  const [coil] = pickup.coils;
  if (coilCount > 1 && pickup.coils.length === 1) return `${pickup.pickup} (${coil!.coil} coil)`;
  const remarks = coilRemarks(pickup);
  return remarks.length === 0 ? pickup.pickup : `${pickup.pickup} (${remarks.join(", ")})`;
}

function coilRemarks(pickup: SoundingPickup): string[] {
  const parallel = pickup.joined === "parallel" ? ["coils in parallel"] : [];
  return pickup.coilsInPhase ? parallel : [...parallel, "coils out of phase"];
}

function namesIn(arrangement: Arrangement<SoundingPickup>, sources: readonly CoilSource[]): string {
  if ("member" in arrangement) return nameOf(arrangement.member, sources);
  const groups = arrangement.groups.map((group) =>
    "member" in group ? namesIn(group, sources) : `(${namesIn(group, sources)} in ${group.joined})`,
  );
  return groups.join(" + ");
}

const HUM_WORDS = {
  cancelling: "hum cancelling",
  "partly cancelling": "hum partly cancelling",
  "not cancelling": "not hum cancelling",
} as const;

type Described = Omit<SettingDescription, "label">;

function wordsForOne(pickup: SoundingPickup, { hum }: Described, sources: readonly CoilSource[]): string {
  const split = pickup.coils.length === 1;
  const name = split ? nameOf(pickup, sources) : pickup.pickup;
  const remarks = coilRemarks(pickup);
  // Two coils of one pickup are there to cancel hum: only their failing to is worth a word.
  if (hum !== null && hum !== "cancelling") remarks.push(HUM_WORDS[hum]);
  return [name, ...remarks].join(", ");
}

/** Which pickups stand against the rest, the smaller side; the whole phrase is "in phase" where none does. */
function phaseWords(pickups: readonly SoundingPickup[]): string {
  const against = pickups.filter((pickup) => !pickup.inPhase);
  if (against.length === 0) return "in phase";
  if (pickups.length === 2) return "out of phase";
  const others = pickups.filter((pickup) => pickup.inPhase);
  const odd = against.length <= others.length ? against : others;
  return `${odd.map((pickup) => pickup.pickup).join(" and ")} out of phase`;
}

/** The setting in the trade's words. */
export function wordsFor(
  arrangement: Arrangement<SoundingPickup>,
  description: Described,
  sources: readonly CoilSource[],
): string {
  if (description.pickups.length === 1 && "member" in arrangement)
    return wordsForOne(arrangement.member, description, sources);
  const joined = "member" in arrangement ? "" : arrangement.joined;
  const words = [namesIn(arrangement, sources), joined, phaseWords(description.pickups)];
  if (description.hum) words.push(HUM_WORDS[description.hum]);
  return words.filter((word) => word !== "").join(", ");
}
