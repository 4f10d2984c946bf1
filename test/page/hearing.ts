import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { chromium, type Page } from "playwright-core";
import { inject } from "vitest";
import { encodeWav } from "../../src/audio/wav-encode.ts";
import { ALONE } from "./flags.ts";

/**
 * A browser whose input hears these channels whenever it is opened, from their beginning, on the run's page.
 * @param act may have the input hear something else from the next time on that it is opened
 */
export async function hearing(
  channels: readonly Float32Array[],
  sampleRateHz: number,
  act: (page: Page, hear: (channels: readonly Float32Array[]) => Promise<void>) => Promise<void>,
): Promise<void> {
  const folder = await mkdtemp(join(tmpdir(), "hearing-"));
  const input = join(folder, "input.wav");
  const hear = (next: readonly Float32Array[]) =>
    writeFile(input, encodeWav({ sampleRateHz, channels: next }, "pcm16"));
  await hear(channels);
  const browser = await chromium.launch({
    executablePath: "/usr/bin/chromium",
    args: [
      ...ALONE,
      "--use-fake-device-for-media-stream",
      "--use-fake-ui-for-media-stream",
      `--use-file-for-fake-audio-capture=${input}`,
    ],
  });
  try {
    const page = await browser.newPage();
    await page.goto(inject("origin"));
    await page.bringToFront();
    await act(page, hear);
  } finally {
    await browser.close();
    await rm(folder, { recursive: true });
  }
}
