import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { chromium, type Page } from "playwright-core";
import { inject } from "vitest";
import { encodeWav } from "../../src/audio/wav-encode.ts";
import { ALONE } from "./flags.ts";

/** A browser whose input hears these channels from the moment it is opened, on the run's page. */
export async function hearing(
  channels: readonly Float32Array[],
  sampleRateHz: number,
  act: (page: Page) => Promise<void>,
): Promise<void> {
  const folder = await mkdtemp(join(tmpdir(), "hearing-"));
  const input = join(folder, "input.wav");
  await writeFile(input, encodeWav({ sampleRateHz, channels }, "pcm16"));
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
    await act(page);
  } finally {
    await browser.close();
    await rm(folder, { recursive: true });
  }
}
