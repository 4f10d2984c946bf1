import type { SoundingCoil } from "./position-coils.ts";
import type { Joined } from "./position-relations.ts";

/** One pickup as a setting uses it. */
export interface SoundingPickup {
  readonly pickup: string;
  readonly coils: readonly SoundingCoil[];
  /** How its own coils are joined; null with one coil. */
  readonly joined: Joined | null;
  /** Whether its own coils help each other. */
  readonly coilsInPhase: boolean;
  /** Whether it helps the first pickup of the setting. */
  readonly inPhase: boolean;
}

export interface SettingDescription {
  /** "bridge + middle, parallel, in phase, hum cancelling". */
  readonly label: string;
  readonly coils: readonly SoundingCoil[];
  readonly pickups: readonly SoundingPickup[];
  /** How the pickups are joined; "many" where they are too many to be sorted out. */
  readonly relation: "silent" | "alone" | "parallel" | "series" | "series-parallel" | "many";
  /** Whether all that sounds helps each other; null with one coil or none. */
  readonly phase: "in phase" | "out of phase" | null;
  /** What becomes of hum where several coils sound; null with one coil or none. */
  readonly hum: "cancelling" | "partly cancelling" | "not cancelling" | null;
}
