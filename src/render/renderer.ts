import type { Sound } from "../audio/sound.ts";
import type { Build } from "../build-file/schema.ts";
import type { Settings } from "../build-file/settings.ts";
import type { Checkpoint } from "../checkpoint.ts";
import { faultAt } from "../errors.ts";
import type { Convolver } from "../filter/convolver.ts";
import type { TransferFunction } from "../filter/impulse-response.ts";
import { createQuickConvolver } from "../filter/quick-convolve.ts";
import type { Chain } from "../listening/chain.ts";
import { NoiseMaker, type NoiseWish } from "../listening/noise/noise-maker.ts";
import { ResponseEngine } from "../response/engine.ts";
import { type Feed, feedOf, type SignalSource } from "./feed.ts";
import { filterBank } from "./filter-bank.ts";
import type { FilterPlan } from "./filters.ts";
import { type AskedListening, chainOf, through } from "./heard-through.ts";
import { INAUDIBLE, isUnder } from "./levels.ts";
import { isSilent, type UndoLimit, undoLimits } from "./undo.ts";

export interface RenderRequest {
  readonly build: Build;
  readonly signal: SignalSource;
  /** Hum and hiss beside the sound, at their true level. */
  readonly noise?: NoiseWish | undefined;
  /** The circuit that a recording has already been through. */
  readonly recordedWith?: { readonly build: Build; readonly settings: Settings } | undefined;
  /** What the sound at the jack is heard through. */
  readonly listening?: AskedListening | undefined;
}

export interface Renderer {
  readonly sampleRateHz: number;
  /** By how much every rendering is later than its input. */
  readonly delaySamples: number;
  /** The sound in one of the planned settings, filter tails included; at the jack ±1 is ±1 V. */
  render(settings: Settings): Sound;
  /** The same in memory that the next call writes over. */
  renderPassing(settings: Settings): Sound;
  /** What is the same for settings that sound the same, as where the position leaves a knob out of the circuit. */
  soundOf(settings: Settings): object;
  /** Whether what was rendered last is nothing but hum and hiss. */
  readonly wasSilent: boolean;
  /** Where the bound on undoing `recordedWith` holds this setting back. */
  limitsIn(settings: Settings): readonly UndoLimit[];
}

/** Of the inputs, for all channels together: four lengths of filter for three coils' signals of 30 s at 48 kHz. */
const MAX_SPECTRA_BYTES = 96 * 2 ** 20;

function oldCircuit({ recordedWith }: RenderRequest): TransferFunction | undefined {
  if (!recordedWith) return undefined;
  const transfers = new ResponseEngine(recordedWith.build).transfersIn(recordedWith.settings);
  const total: TransferFunction = (frequenciesHz) => transfers.total(frequenciesHz);
  if (!isSilent(total)) return total;
  const message = "in these settings that circuit lets nothing through, so no recording can have been made with it";
  throw faultAt("SOUND_UNUSABLE", "recordedWith.settings", message);
}

/** One convolver for each output channel: its own drive beside the coils' signals, which all channels share. */
function convolvers(feed: Feed, longestFilter: number, checkpoint: () => void): Convolver[] {
  const inputs = feed.drive.length > 0 ? feed.drive.map((drive) => [drive, ...feed.coils]) : [feed.coils];
  const memoryBytes = MAX_SPECTRA_BYTES / inputs.length;
  return inputs.map((channel) => createQuickConvolver(channel, longestFilter, { checkpoint, memoryBytes }));
}

/** What goes in and through what. */
export interface RenderBasis {
  readonly engine: ResponseEngine;
  readonly feed: Feed;
  readonly noise?: NoiseMaker | undefined;
  readonly recordedThrough?: TransferFunction | undefined;
  readonly chain?: Chain | undefined;
}

/** @throws PresolderError for a signal, a `recordedWith` or a cabinet that cannot be used */
export function basisOf(request: RenderRequest, { checkpoint }: Checkpoint): RenderBasis {
  const engine = new ResponseEngine(request.build);
  const recordedThrough = oldCircuit(request);
  const feed = feedOf(request.build, engine.sources, request.signal, checkpoint);
  const noise = request.noise && new NoiseMaker(request.build, request.noise, feed.sampleRateHz);
  const chain = request.listening && chainOf(request.listening, feed.sampleRateHz);
  return { engine, feed, noise, recordedThrough, chain };
}

/**
 * Makes ready to render one signal in the given settings.
 * @throws PresolderError for a signal or `recordedWith` that cannot be used
 */
export function createRenderer(request: RenderRequest, planned: readonly Settings[], work: Checkpoint): Renderer {
  return rendererOf(basisOf(request, work), planned, work);
}

/**
 * Each coil's own signal goes through that coil's transfer and they are summed; a dry sound, which drives every coil alike, goes
 * through the exact sum; a stereo file is rendered channel by channel.
 */
export function rendererOf(
  { engine, feed, noise, recordedThrough, chain }: RenderBasis,
  planned: readonly Settings[],
  { checkpoint }: Checkpoint,
): Renderer {
  const plan: FilterPlan = {
    engine,
    sampleRateHz: feed.sampleRateHz,
    hasDrive: feed.drive.length > 0,
    hasCoils: feed.coils.length > 0,
    recordedThrough,
  };
  engine.plan(planned);
  const filtersOf = filterBank(plan);
  let longest = 1;
  let delaySamples = 0;
  for (const settings of planned) {
    checkpoint();
    const filters = filtersOf(settings);
    longest = Math.max(longest, ...filters.taps.map((taps) => taps.length));
    delaySamples = filters.delaySamples;
  }
  const channels = convolvers(feed, longest, checkpoint);
  let passing: Float32Array[] | undefined;
  let wasSilent = false;
  const rendered = (settings: Settings, into?: readonly Float32Array[]): Sound => {
    const { taps } = filtersOf(settings);
    const dry = channels.map((channel, index) => {
      const room = into?.[index];
      return channel.render(taps, { checkpoint, ...(room && { into: room }) });
    });
    wasSilent = noise !== undefined && isUnder(dry, INAUDIBLE);
    noise?.addTo(dry, settings);
    return { sampleRateHz: feed.sampleRateHz, channels: dry };
  };
  return {
    sampleRateHz: feed.sampleRateHz,
    delaySamples: delaySamples + (chain?.delaySamples ?? 0),
    render: (settings) => through(chain, rendered(settings), checkpoint),
    renderPassing: (settings) => {
      passing ??= channels.map(({ inputLength }) => new Float32Array(inputLength + longest - 1));
      return through(chain, rendered(settings, passing), checkpoint);
    },
    soundOf: filtersOf,
    get wasSilent() {
      return wasSilent;
    },
    limitsIn: (settings) => {
      if (!recordedThrough) return [];
      const transfers = engine.transfersIn(settings);
      return undoLimits((frequenciesHz) => transfers.total(frequenciesHz), recordedThrough);
    },
  };
}
