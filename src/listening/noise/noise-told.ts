import type { Build } from "../../build-file/schema.ts";
import { type SettingSummary, summarize } from "../../build-file/setting-label.ts";
import { Controls, rawSettings, type Settings, type SettingValue } from "../../build-file/settings.ts";
import type { Checkpoint } from "../../checkpoint.ts";
import { decibels } from "../../decibels.ts";
import { SettingDescriber } from "../../response/labels/setting-describer.ts";
import { Guitar } from "./guitar.ts";
import type { Level } from "./level.ts";
import type { NoiseConditions } from "./noise-conditions.ts";
import { type PositionNoise, positionNoise } from "./position-noise.ts";
import { type RemedyName, remediesFor } from "./remedies.ts";

export interface NoiseQuestion {
  readonly build: Build;
  readonly settings: readonly Settings[];
  readonly conditions: NoiseConditions;
}

/** A level as it is told: µV RMS from 20 Hz to 20 kHz, and dB re the playing level; beside them the same A-weighted, both sides of it. */
export interface ToldLevel {
  readonly microvolts: number;
  /** Null where no string is heard. */
  readonly decibels: number | null;
  readonly microvoltsA: number;
  readonly decibelsA: number | null;
}

export interface ToldRemedy {
  readonly name: RemedyName;
  /** All hum with it. */
  readonly hum: ToldLevel;
  /** dB, of the hum, as it is and A-weighted; below 0 where it helps. Null where there is no hum before. */
  readonly change: number | null;
  readonly changeA: number | null;
}

export interface ToldPosition extends SettingSummary {
  readonly settings: Readonly<Record<string, SettingValue>>;
  /** What sounds: "bridge + middle, parallel, in phase, hum cancelling". */
  readonly sounds: string;
  readonly playing: Pick<ToldLevel, "microvolts" | "microvoltsA">;
  readonly hum: Readonly<Record<"coils" | "loops" | "runs" | "sum", ToldLevel>>;
  readonly hiss: Readonly<Record<"circuit" | "amplifier" | "sum", ToldLevel>>;
  /** cm², as the jack sees it. */
  readonly loopArea: number;
  readonly remedies: readonly ToldRemedy[];
}

export interface NoiseTold {
  readonly positions: readonly ToldPosition[];
  /** Which single coil a reverse-wound one would take the place of; null where there is nothing to pair, or one already. */
  readonly reverseWound: string | null;
}

/** Under it a level is nothing, and a change of it says nothing. */
const LEAST_VOLTS = 1e-12;

function toldLevel({ flat, weighted }: Level, playing: Level): ToldLevel {
  const beside = (volts: number, string: number) => (string > LEAST_VOLTS ? decibels(volts / string) : null);
  return {
    microvolts: flat * 1e6,
    decibels: beside(flat, playing.flat),
    microvoltsA: weighted * 1e6,
    decibelsA: beside(weighted, playing.weighted),
  };
}

function toldRemedy(name: RemedyName, before: PositionNoise, after: PositionNoise): ToldRemedy {
  const change = (key: keyof Level) =>
    before.hum[key] > LEAST_VOLTS ? decibels(after.hum[key] / before.hum[key]) : null;
  return { name, hum: toldLevel(after.hum, after.playing), change: change("flat"), changeA: change("weighted") };
}

/** Hum and hiss in every setting asked for, and what would help against the hum. */
export function noiseTold({ build, settings, conditions }: NoiseQuestion, { checkpoint }: Checkpoint): NoiseTold {
  const controls = new Controls(build);
  const describer = new SettingDescriber(build);
  const guitar = new Guitar(build);
  const remedies = remediesFor(build);
  const positions = settings.map((each): ToldPosition => {
    const noiseOf = (one: Guitar) => {
      checkpoint();
      return positionNoise(one, each, conditions);
    };
    const noise = noiseOf(guitar);
    const { playing } = noise;
    const told = (level: Level) => toldLevel(level, playing);
    return {
      ...summarize(controls, each),
      settings: rawSettings(controls, each),
      sounds: describer.describe(each).label,
      playing: { microvolts: playing.flat * 1e6, microvoltsA: playing.weighted * 1e6 },
      hum: { coils: told(noise.coils), loops: told(noise.loops), runs: told(noise.runs), sum: told(noise.hum) },
      hiss: { circuit: told(noise.thermal), amplifier: told(noise.amplifier), sum: told(noise.hiss) },
      loopArea: noise.loopArea * 1e4,
      remedies: remedies.flatMap(({ name, guitar: changed }) =>
        changed ? [toldRemedy(name, noise, noiseOf(changed))] : [],
      ),
    };
  });
  const reverseWound = remedies.find(({ pickup }) => pickup !== undefined)?.pickup ?? null;
  return { positions, reverseWound };
}

/** Every position of the main switch, the other controls as they stand. */
export function mainPositions(build: Build, settings: Settings): Settings[] {
  const { main } = new Controls(build);
  if (!main) return [settings];
  return main.table.positions.map((_, index) => ({
    ...settings,
    switches: { ...settings.switches, [main.name]: index + 1 },
  }));
}
