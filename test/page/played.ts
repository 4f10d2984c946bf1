import type { Page } from "playwright-core";

/** Notes what is played and through which filters, from the page's first script on; `played` and `filters` give it back. */
export async function noteSounds(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const noted = { played: [] as AudioBuffer[], filters: [] as Float32Array[] };
    Object.assign(window, { noted });
    const { start } = AudioBufferSourceNode.prototype;
    AudioBufferSourceNode.prototype.start = function (...when) {
      if (this.buffer) noted.played.push(this.buffer);
      return start.apply(this, when);
    };
    const Plain = window.ConvolverNode;
    window.ConvolverNode = class extends Plain {
      constructor(context: BaseAudioContext, options?: ConvolverOptions) {
        super(context, options);
        if (options?.buffer) noted.filters.push(options.buffer.getChannelData(0).slice());
      }
    };
  });
}

interface Noted {
  readonly played: readonly AudioBuffer[];
  readonly filters: readonly Float32Array[];
}

const bytesOf = `(samples) => {
  const bytes = new Uint8Array(samples.buffer, samples.byteOffset, samples.byteLength);
  let text = "";
  for (let at = 0; at < bytes.length; at += 32768) text += String.fromCharCode(...bytes.subarray(at, at + 32768));
  return btoa(text);
}`;

function samplesOf(base64: string): Float32Array {
  const bytes = Buffer.from(base64, "base64");
  return new Float32Array(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength));
}

/** The first channel of the sound that was started last. */
export async function lastPlayed(page: Page): Promise<{ samples: Float32Array; sampleRateHz: number; count: number }> {
  const told = (await page.evaluate(`(() => {
    const { played } = window.noted;
    const last = played.at(-1);
    return { samples: (${bytesOf})(last.getChannelData(0)), sampleRateHz: last.sampleRate, count: played.length };
  })()`)) as { samples: string; sampleRateHz: number; count: number };
  return { ...told, samples: samplesOf(told.samples) };
}

export async function playedCount(page: Page): Promise<number> {
  return page.evaluate(() => (window as unknown as { noted: Noted }).noted.played.length);
}

/** The taps of every filter that a sound has gone through, in order. */
export async function filtersUsed(page: Page): Promise<Float32Array[]> {
  const all = (await page.evaluate(`window.noted.filters.map(${bytesOf})`)) as string[];
  return all.map(samplesOf);
}
