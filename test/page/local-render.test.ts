import { expect, it } from "vitest";
import { encodeWav } from "../../src/audio/wav-encode.ts";
import { onePickup } from "../fixtures/circuits.ts";
import { describeWith } from "../tools.ts";
import { usePage } from "./browser.ts";
import { bringModules } from "./in-browser.ts";

const RATE_HZ = 48_000;

/** Runs in the browser: the same file through the same guard, here and by the service. */
async function renderedTwice(
  build: object,
  bytes: number[],
  rate: number,
): Promise<{ here: number[]; there: number[] }> {
  const { renderThrough } = (
    globalThis as never as {
      modules: { renderThrough(sound: AudioBuffer, impulse: AudioBuffer): Promise<AudioBuffer> };
    }
  ).modules;
  const headers = { "content-type": "application/json" };
  const link = await fetch("/api/link", { method: "POST", headers, body: JSON.stringify({ build }) });
  const { code } = (await link.json()) as { code: string };
  const context = new OfflineAudioContext(1, 1, rate);
  const decode = async (response: Response) => context.decodeAudioData(await response.arrayBuffer());
  const impulse = await decode(await fetch(`/api/impulse.wav?build=${code}&rate=${rate}`));
  const file = new Blob([Uint8Array.from(bytes)], { type: "audio/wav" });
  const form = new FormData();
  form.set("request", JSON.stringify({ build, encoding: "float32", level: "true" }));
  form.set("signal", file, "own.wav");
  const there = await decode(await fetch("/api/preview", { method: "POST", body: form }));
  const here = await renderThrough(await context.decodeAudioData(await file.arrayBuffer()), impulse);
  return { here: Array.from(here.getChannelData(0)), there: Array.from(there.getChannelData(0)) };
}

describeWith("chromium", "one's own recording, rendered in the browser", () => {
  const site = usePage();

  it("is what the service makes of it, to the last of its ring-out", async () => {
    const { page } = await site.visit({ path: "/healthz" });
    await bringModules(page, 'export { renderThrough } from "./listen/local-render.ts";');
    // A sound that breaks off at full height rings the longest.
    const samples = Float32Array.from({ length: 4800 }, (_, n) => 0.5 * Math.cos((2 * Math.PI * 220 * n) / RATE_HZ));
    const wav = encodeWav({ sampleRateHz: RATE_HZ, channels: [samples] }, "float32");
    const call = `(${renderedTwice})(${JSON.stringify(onePickup())}, [${[...wav]}], ${RATE_HZ})`;
    const { here, there } = (await page.evaluate(call)) as Awaited<ReturnType<typeof renderedTwice>>;
    expect(here).toHaveLength(there.length);
    expect(there.length).toBeGreaterThan(samples.length);
    // Both convolve in single precision: −100 dB.
    for (const [n, sample] of there.entries()) expect(Math.abs(here[n]! - sample)).toBeLessThan(1e-5);
  });
});
