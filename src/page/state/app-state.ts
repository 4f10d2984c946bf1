import type { MeterSpec } from "../../bench/meter/own/own-meter.ts";
import type { SheetOptions } from "../../bench/sheet/options.ts";
import type { RawSettings } from "../../build-file/settings.ts";
import type { BenchAnswer, DrawerRequest } from "../../contract/bench/bench.ts";
import type { StartScenario } from "../../contract/page-data.ts";
import type { InputFault } from "../../errors.ts";
import type { HandName, StringAge } from "../../render/playing.ts";
import type { Band } from "../curves/band.ts";
import type { Family } from "../curves/family.ts";
import type { LivePath } from "../drawing/live-path.ts";
import type { NoiseHeard } from "../sound/guard-noise.ts";
import type { BuildSource, Reading } from "./reading.ts";
import { Store } from "./store.ts";

export type FamilyAxis = "tone" | "position" | "volume" | "builds";
export type LevelView = "reference" | "true";

/** A reading that the person asked for, between any two lugs. */
export interface OwnProbe {
  readonly between: readonly [string, string];
  readonly settings: RawSettings;
}

export interface BenchOptions {
  /** °C. */
  readonly temperature: number;
  /** The person's own; undefined where they did not say which. */
  readonly meter: MeterSpec | undefined;
  /** What differs from the usual in soldering: lengths, reels, iron. */
  readonly sheet: Partial<SheetOptions>;
  readonly drawer: readonly DrawerRequest[];
  readonly probes: readonly OwnProbe[];
}

/** What is between the jack and the ear: nothing, a clean amplifier and the stated speaker, or one's own cabinet in its place. */
export type HeardThrough = "jack" | "clean" | "own";

export interface OwnSound {
  readonly name: string;
  readonly file: File;
}

/** What is shown of a guard in a setting: curves, words and drawing are always of the same one. */
export interface View {
  readonly reading: Reading;
  readonly settings: RawSettings;
  readonly label: string;
  readonly family: Family;
  /** Where the drawing wants it. */
  readonly path: LivePath | undefined;
}

export interface AppState {
  /** The build as it is being written, readable or not. */
  readonly source: BuildSource | undefined;
  /** The last readable state of it; curves and drawing show this one. */
  readonly reading: Reading | undefined;
  /** Stands for the guard that `reading` is of: the same through all its changes, another one for every guard opened. */
  readonly guard: object;
  /** What keeps `source` from being read; empty where `reading` is up to date. */
  readonly faults: readonly InputFault[];
  /** How many example guards that were asked for are still being fetched. */
  readonly opening: number;
  /** Every control of `reading` by its own name. */
  readonly settings: RawSettings;
  /** The latest answer about `reading` in `settings`; a frame or so behind them. */
  readonly view: View | undefined;
  /** Whether there is a drawing to show the signal's way in. */
  readonly wantsPath: boolean;
  /** The build kept for comparison. */
  readonly other: Reading | undefined;
  readonly family: FamilyAxis;
  readonly levelView: LevelView;
  /** What part tolerances leave open around the current curve, where it is wanted and known. */
  readonly wantsBand: boolean;
  /** °C between which the band has the guard played; undefined for what its values are marked at. */
  readonly bandCelsius: readonly [number, number] | undefined;
  readonly band: Band | undefined;
  readonly signal: string;
  /** How a phrase is plucked, and the age of its strings. */
  readonly hand: HandName;
  readonly stringAge: StringAge;
  readonly heardThrough: HeardThrough;
  /** 0 to 10, of the amplifier. */
  readonly drive: number;
  /** The impulse response of one's own cabinet. */
  readonly cabinet: OwnSound | undefined;
  /** Whether the guard's hum and hiss are heard beside the string, and of which mains. */
  readonly noise: NoiseHeard;
  readonly levelMatched: boolean;
  readonly loop: boolean;
  readonly playing: "no" | "loading" | "yes";
  readonly ownSound: OwnSound | undefined;
  readonly liveInput: MediaStream | undefined;
  /** From string to ear, in seconds, once the live input sounds. */
  readonly liveLatencySeconds: number | undefined;
  /** Factor on the live input after the filter. */
  readonly liveGain: number;
  /** Which of the two builds is heard. */
  readonly heardBuild: "A" | "B";
  readonly benchOptions: BenchOptions;
  /** What the bench says about `benchOf`, once it is known. */
  readonly bench: BenchAnswer | undefined;
  readonly benchOf: Reading | undefined;
  /** Why the bench says nothing; empty where it answered. */
  readonly benchFault: string;
  /** The example that the guard on the bench began as, or the name of its file after "file:"; empty where it is neither. */
  readonly startedFrom: string;
  /** What the example on the bench is about. */
  readonly story:
    | (Pick<StartScenario, "description" | "question"> & { readonly sweep?: StartScenario["sweep"] | undefined })
    | undefined;
  /** What the latest step came to in wires and parts, where it touched several of them; empty otherwise. */
  readonly changed: string;
  /** Said to the person in the status line. */
  readonly notice: string;
  readonly canUndo: boolean;
  readonly canRedo: boolean;
}

export type AppStore = Store<AppState>;

export function createAppStore(): AppStore {
  return new Store<AppState>({
    source: undefined,
    reading: undefined,
    guard: {},
    faults: [],
    opening: 0,
    settings: {},
    view: undefined,
    wantsPath: false,
    other: undefined,
    family: "tone",
    levelView: "reference",
    wantsBand: false,
    bandCelsius: undefined,
    band: undefined,
    signal: "",
    hand: "usual",
    stringAge: "used",
    heardThrough: "jack",
    drive: 0,
    cabinet: undefined,
    noise: "off",
    levelMatched: true,
    loop: true,
    playing: "no",
    ownSound: undefined,
    liveInput: undefined,
    liveLatencySeconds: undefined,
    liveGain: 0,
    heardBuild: "A",
    benchOptions: { temperature: 20, meter: undefined, sheet: {}, drawer: [], probes: [] },
    bench: undefined,
    benchOf: undefined,
    benchFault: "",
    startedFrom: "",
    story: undefined,
    changed: "",
    notice: "",
    canUndo: false,
    canRedo: false,
  });
}
