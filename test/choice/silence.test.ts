import { expect, it } from "vitest";
import { readBuild } from "../../src/build-file/read-build.ts";
import { parseSettings, type RawSettings } from "../../src/build-file/settings.ts";
import { driveOfPartials, flatDrive } from "../../src/choice/drive.ts";
import { energiesFor, Guard, isSilent } from "../../src/choice/guard.ts";
import { pluckedPartials } from "../../src/render/plucked-partials.ts";
import { coilPlaces, stringSetOf } from "../../src/response/coil-places.ts";

const guard = new Guard(
  readBuild({
    presolder: 1,
    title: "Like coils, the middle one turned by a switch",
    plan: {
      layout: "lever-5-two-tone",
      pickups: { neck: "single-vintage", middle: "single-vintage", bridge: "single-vintage" },
      volume: "250k",
      tones: [
        { pot: "250k", cap: "22n", pickups: ["neck"] },
        { pot: "250k", cap: "22n", pickups: ["middle"] },
      ],
      phase: { pickup: "middle", by: "tone2" },
    },
  }),
);
const { build, sources, controls } = guard;
const partials = pluckedPartials(coilPlaces(build, sources), stringSetOf(build), {});
const plucked = driveOfPartials("strum", partials, sources.length);

function isSilentIn(raw: RawSettings, drive: typeof plucked): boolean {
  const transfers = guard.transfers(parseSettings(controls, raw));
  return isSilent(transfers, drive, energiesFor(transfers, drive));
}

const OUT_OF_PHASE = { lever: 2, "tone2.s": "up" } as const;

it("like coils out of phase cancel where one signal drives both, and not under a string that each hears at its own place", () => {
  expect(isSilentIn(OUT_OF_PHASE, flatDrive())).toBe(true);
  expect(isSilentIn(OUT_OF_PHASE, plucked)).toBe(false);
});

it("what leaks past a volume at its end is silence, and what a tone at 0 leaves is none", () => {
  for (const drive of [flatDrive(), plucked]) {
    expect(isSilentIn({ lever: 1, volume: 0 }, drive)).toBe(true);
    expect(isSilentIn({ lever: 3, tone: 0 }, drive)).toBe(false);
  }
});
