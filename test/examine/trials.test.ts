import { expect, it } from "vitest";
import { casesOf, effort } from "../effort.ts";
import { seeded } from "./simulated-guard.ts";
import { trials } from "./trials.ts";

const SEEDS = [3, 4];

it.each(casesOf(SEEDS, 1))(
  "names a hidden departure first, and calls sound guards as drawn, of parts as they come: %d",
  (seed) => {
    const { missed, faulty, sound, asDrawn, firstThree } = trials(effort(2, 10), 2, seeded(seed));
    expect(asDrawn, missed.join("\n")).toBe(sound);
    // One in ten may come second.
    expect(missed.length, missed.join("\n")).toBeLessThanOrEqual(Math.max(0, Math.floor(faulty / 10)));
    expect(firstThree, missed.join("\n")).toBe(faulty);
  },
);
