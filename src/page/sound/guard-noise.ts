import { BoundedMap } from "../../bounded-map.ts";
import type { Build } from "../../build-file/schema.ts";
import type { Settings } from "../../build-file/settings.ts";
import type { NoiseMaker } from "../../listening/noise/noise-maker.ts";

/** Whether hum and hiss are heard, and of which mains. */
export type NoiseHeard = "off" | "50" | "60";

/** The guard on the bench and the one beside it. */
const MAX_MAKERS = 3;

interface SetGuard {
  readonly build: Build;
  readonly settings: Settings;
  readonly sampleRateHz: number;
}

type Made = (build: Build, noise: "50" | "60", sampleRateHz: number) => NoiseMaker;

/** Hum and hiss of guards; what makes them is loaded with the first wish to hear it. */
export class GuardNoise {
  readonly #makers = new BoundedMap<string, NoiseMaker>(MAX_MAKERS);
  #make: Made | undefined;

  /** To be waited for before `addTo`. */
  async bring(noise: NoiseHeard): Promise<void> {
    if (noise !== "off") this.#make ??= (await import("./make-noise.ts")).makeNoise;
  }

  /** Adds a setting's noise to what comes out of the jack, in place. */
  addTo(channels: readonly Float32Array[], guard: SetGuard, noise: NoiseHeard): void {
    this.#makerOf(guard, noise)?.addTo(channels, guard.settings);
  }

  /** What is to be repeated without end, each with a length of its own, and summed. */
  periods(guard: SetGuard, noise: NoiseHeard): Float32Array<ArrayBuffer>[] {
    const periods = this.#makerOf(guard, noise)?.periodsIn(guard.settings) ?? [];
    return periods.map((period) => Float32Array.from(period));
  }

  #makerOf({ build, sampleRateHz }: SetGuard, noise: NoiseHeard): NoiseMaker | undefined {
    if (noise === "off") return undefined;
    const key = JSON.stringify([build, noise, sampleRateHz]);
    const maker = this.#makers.get(key) ?? this.#make!(build, noise, sampleRateHz);
    this.#makers.set(key, maker);
    return maker;
  }
}
