import { expect, test } from "vitest";
import { readBuild } from "../../src/build-file/read-build.ts";
import { LugSpeech } from "../../src/page/words/lug-speech.ts";
import { presetGuard } from "../fixtures/harness.ts";

const speech = new LugSpeech(readBuild(presetGuard("hss-push-pull-split")));

test.each([
  [
    "Joint 19. bridge.slug.start: the lead bridge.screw.finish.",
    "Joint 19. Bridge humbucker, slug coil (north), start [bridge.slug.start]: the lead bridge humbucker, screw coil (south), finish [bridge.screw.finish].",
  ],
  ["tone2.1 to tone2.10", "Lower tone, lug 1 (counter-clockwise end) [tone2.1] to tone2.10"],
  ["jack, lever 2, tone2.s up", "jack, lever 2, lower tone's push-pull [tone2.s] up"],
  ["tone2 has no effect on the volume.", "Lower tone has no effect on the volume."],
  ["volume is 500 Ω. Is 500 kΩ meant?", "Volume is 500 Ω. Is 500 kΩ meant?"],
  ["bridge works into 125 kΩ in position 1.", "Bridge works into 125 kΩ in position 1."],
  ["volume at 5", "volume at 5"],
  ["No code in here: 22 nF, 250 kΩ.", "No code in here: 22 nF, 250 kΩ."],
])("“%s” in words", (text, words) => {
  expect(speech.plain(text)).toBe(words);
});
