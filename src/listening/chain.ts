import type { Sound } from "../audio/sound.ts";
import type { ImpulseResponse } from "../filter/impulse-response.ts";
import { createQuickConvolver } from "../filter/quick-convolve.ts";
import { cabinetFilter } from "./cabinet/cabinet-filter.ts";
import type { Cabinet } from "./cabinet/read-cabinet.ts";
import { DRIVE_DELAY_SAMPLES } from "./drive/delay.ts";
import { driven } from "./drive/driven.ts";
import { speakerFilter } from "./speaker/filter.ts";

/** What is between the jack and the ear: a clean amplifier, flat but for its drive, and a speaker. */
export interface Listening {
  /** 0 to MAX_DRIVE; 0 is linear. */
  readonly drive: number;
  /** One's own instead of the stated speaker. */
  readonly cabinet?: Cabinet | undefined;
}

export interface Chain {
  /** The same whether it is driven or not. */
  readonly delaySamples: number;
  /** What the speaker gives of a sound in volts at the jack, its ringing included. */
  through(jack: Sound, checkpoint?: () => void): Sound;
}

/** The last filter of the chain. @throws PresolderError SOUND_UNUSABLE for a cabinet that lets nothing through */
export function speakerOf({ cabinet }: Listening, sampleRateHz: number): ImpulseResponse {
  return cabinet ? cabinetFilter(cabinet, sampleRateHz) : speakerFilter(sampleRateHz);
}

function later(taps: Float64Array, samples: number): Float64Array {
  const moved = new Float64Array(taps.length + samples);
  moved.set(taps, samples);
  return moved;
}

/** @throws PresolderError SOUND_UNUSABLE for a cabinet that lets nothing through */
export function createChain(listening: Listening, sampleRateHz: number): Chain {
  const { drive } = listening;
  const speaker = speakerOf(listening, sampleRateHz);
  const taps = drive > 0 ? speaker.taps : later(speaker.taps, DRIVE_DELAY_SAMPLES);
  const channelThrough = (volts: Float32Array, checkpoint?: () => void) => {
    const input = drive > 0 ? driven(volts, drive, checkpoint) : volts;
    return createQuickConvolver([input], taps.length, checkpoint && { checkpoint }).render([taps]);
  };
  return {
    delaySamples: speaker.delaySamples + DRIVE_DELAY_SAMPLES,
    through: ({ channels }, checkpoint) => ({
      sampleRateHz,
      channels: channels.map((volts) => channelThrough(volts, checkpoint)),
    }),
  };
}
