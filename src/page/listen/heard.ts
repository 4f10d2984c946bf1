import type { RawSettings } from "../../build-file/settings.ts";
import type { Reading } from "../state/reading.ts";

/** A guard as it is set, for its sound. */
export interface Heard {
  readonly reading: Reading;
  readonly settings: RawSettings;
}
