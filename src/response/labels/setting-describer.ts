import { BoundedMap } from "../../bounded-map.ts";
import type { Build } from "../../build-file/schema.ts";
import { type Settings, settingsKey } from "../../build-file/settings.ts";
import type { SettingDescription, SoundingPickup } from "./description.ts";
import { agree, fullControls, netFraction, type SoundingCoil, soundingCoils, sumOf } from "./position-coils.ts";
import { PositionProbe } from "./position-probe.ts";
import { type Arrangement, arrange, type Joined, pairRelations } from "./position-relations.ts";
import { wordsFor } from "./position-words.ts";

/** Less than this of what coils could make together means that they work against each other; a stack's lower coil does not. */
const OPPOSED_BELOW = 0.5;
/** Hum left of what adding up would make: 0.3 is 10 dB, what everyday mismatch of two pickups leaves at worst. */
const CANCELS_BELOW = 0.3;
const PARTLY_CANCELS_BELOW = 0.6;

export function humWord(coils: readonly SoundingCoil[]): SettingDescription["hum"] {
  if (coils.length < 2) return null;
  const left = netFraction(coils.map((coil) => coil.hum));
  if (left < CANCELS_BELOW) return "cancelling";
  return left < PARTLY_CANCELS_BELOW ? "partly cancelling" : "not cancelling";
}

/** Four humbuckers are eight coils; sorting takes two solutions a coil. */
const MAX_SORTED_COILS = 24;

type Relation = (a: number, b: number) => Joined;

function pickupsOf(coils: readonly SoundingCoil[], joined: Relation): SoundingPickup[] {
  const names = [...new Set(coils.map((coil) => coil.pickup))];
  const groups = names.map((name) => coils.filter((coil) => coil.pickup === name));
  const reference = sumOf((groups[0] ?? []).map((coil) => coil.signal));
  return groups.map((own) => {
    const [first, second] = own as [SoundingCoil, SoundingCoil?];
    return {
      pickup: first.pickup,
      coils: own,
      joined: second ? joined(first.source, second.source) : null,
      coilsInPhase: netFraction(own.map((coil) => coil.signal)) >= OPPOSED_BELOW,
      inPhase: agree(reference, sumOf(own.map((coil) => coil.signal))),
    };
  });
}

/** Pickups as members where all coils of one meet all coils of another alike; else undefined, and coils must be the members. */
function pickupRelation(joined: Relation, pickups: readonly SoundingPickup[]) {
  const relations = (a: SoundingPickup, b: SoundingPickup) =>
    new Set(a.coils.flatMap((coil) => b.coils.map((other) => joined(coil.source, other.source))));
  const uniform = pickups.every((a, i) => pickups.slice(i + 1).every((b) => relations(a, b).size === 1));
  return uniform ? (a: SoundingPickup, b: SoundingPickup) => [...relations(a, b)][0]! : undefined;
}

/** Each coil as a pickup of its own, for coils of different pickups that are joined criss-cross. */
function coilByCoil(pickups: readonly SoundingPickup[]): SoundingPickup[] {
  return pickups.flatMap((pickup) => pickup.coils.map((coil) => ({ ...pickup, coils: [coil], joined: null })));
}

function relationOf(arrangement: Arrangement<SoundingPickup>): SettingDescription["relation"] {
  if ("member" in arrangement) return "alone";
  return arrangement.groups.every((group) => "member" in group) ? arrangement.joined : "series-parallel";
}

/** A setting of more coils than are sorted: told by number. */
function describeMany(coils: readonly SoundingCoil[]): SettingDescription {
  const pickups = pickupsOf(coils, () => "parallel").map((pickup) => ({ ...pickup, joined: null }));
  const allAgree = pickups.every((pickup) => pickup.inPhase && pickup.coilsInPhase);
  return {
    label: `${pickups.length} pickups, ${allAgree ? "in phase" : "some out of phase"}`,
    coils,
    pickups,
    relation: "many",
    phase: allAgree ? "in phase" : "out of phase",
    hum: humWord(coils),
  };
}

function describe(probe: PositionProbe, settings: Settings, coils: readonly SoundingCoil[]): SettingDescription {
  if (coils.length > MAX_SORTED_COILS) return describeMany(coils);
  const joined = pairRelations(
    probe,
    settings,
    coils.map((coil) => coil.source),
  );
  const pickups = pickupsOf(coils, joined);
  const relation = pickupRelation(joined, pickups);
  const arrangement = relation
    ? arrange(pickups, relation)
    : arrange(coilByCoil(pickups), (a, b) => joined(a.coils[0]!.source, b.coils[0]!.source));
  const allAgree = pickups.every((pickup) => pickup.inPhase && pickup.coilsInPhase);
  const description = {
    coils,
    pickups,
    relation: relationOf(arrangement),
    phase: coils.length < 2 ? null : allAgree ? ("in phase" as const) : ("out of phase" as const),
    hum: humWord(coils),
  };
  return { ...description, label: wordsFor(arrangement, description, probe.sources) };
}

const SILENT: SettingDescription = {
  label: "silent",
  coils: [],
  pickups: [],
  relation: "silent",
  phase: null,
  hum: null,
};

const NOTHING_YET: SettingDescription = { ...SILENT, label: "nothing to hear yet: no pickup" };

/** Descriptions have about a kilobyte; only blends and silent settings ask for more of them than the switches have positions. */
const MAX_KNOWN = 1000;

/** Describes the settings of one build, remembering what depends on the switches alone. */
export class SettingDescriber {
  readonly #build: Build;
  readonly #probe: PositionProbe;
  readonly #known = new BoundedMap<string, SettingDescription>(MAX_KNOWN);

  constructor(build: Build) {
    this.#build = build;
    this.#probe = new PositionProbe(build);
  }

  /**
   * What a setting sounds, found from the wiring: which coils reach the jack, how they are joined, whether they help each
   * other and what becomes of hum. Volume and tone pots are taken at 10; only where that is silent, as they stand.
   */
  describe(settings: Settings): SettingDescription {
    if (this.#probe.sources.length === 0) return NOTHING_YET;
    const full = this.#describeOnce(fullControls(this.#build, settings));
    return full.relation === "silent" ? this.#describeOnce(settings) : full;
  }

  #describeOnce(settings: Settings): SettingDescription {
    const key = settingsKey(settings);
    const known = this.#known.get(key);
    if (known) return known;
    const coils = soundingCoils(this.#probe, settings);
    const description = coils.length === 0 ? SILENT : describe(this.#probe, settings, coils);
    this.#known.set(key, description);
    return description;
  }
}

/** As `SettingDescriber.describe`, for one setting. */
export function describeSetting(build: Build, settings: Settings): SettingDescription {
  return new SettingDescriber(build).describe(settings);
}
