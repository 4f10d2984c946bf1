import type { AmplifierNoise } from "./amplifier.ts";
import type { MainsHz, RoomField } from "./room.ts";

/** Where a guitar hums and hisses. */
export interface NoiseConditions {
  readonly mainsHz: MainsHz;
  readonly room: RoomField;
  readonly kelvin: number;
  readonly amplifier: AmplifierNoise;
}
