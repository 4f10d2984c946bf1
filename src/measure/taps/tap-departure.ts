import type { Settings } from "../../build-file/settings.ts";

/** One way in which the map differs from the drawing. */
export interface TapDeparture {
  readonly kind: "nothing" | "exchanged" | "dead" | "faint" | "silent" | "sounds" | "reversed" | "phase";
  /** Where; absent where it is so in every setting. */
  readonly settings?: Settings;
  readonly pickup?: string;
  readonly coil?: string;
  readonly message: string;
}
