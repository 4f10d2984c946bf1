import { expect, it } from "vitest";
import { seeded } from "../examine/simulated-guard.ts";
import { trials } from "../examine/trials.ts";

const GUARDS = Number(process.env.GUARDS ?? 300);
const SOUND_EVERY = 4;

const percent = (part: number, whole: number) => `${((100 * part) / Math.max(1, whole)).toFixed(1)} %`;

// Guards of parts drawn by laws of their own, each with one departure that nobody is told, examined by the takes of their plans.
it("examinations: a hidden departure in each of three guards in four", { timeout: 3_600_000 }, () => {
  const before = process.cpuUsage().user;
  const { faulty, first, firstThree, likeDrawn, unseen, sound, asDrawn, missed } = trials(
    GUARDS,
    SOUND_EVERY,
    seeded(Number(process.env.SEED ?? 1)),
  );
  const seconds = (process.cpuUsage().user - before) / 1e6 / GUARDS;
  console.log(missed.join("\n"));
  console.log(
    `${GUARDS} guards, ${seconds.toFixed(1)} s each: of ${faulty} departures first ${percent(first, faulty)} (with the drawing ` +
      `${likeDrawn}), first three ${percent(firstThree, faulty)}; ${unseen} that no take can show; of ${sound} sound ` +
      `as drawn ${percent(asDrawn, sound)}`,
  );
  expect(first / faulty).toBeGreaterThanOrEqual(0.9);
  expect(firstThree / faulty).toBeGreaterThanOrEqual(0.98);
  // What the takes cannot tell from the drawing is no answer: of all that is hidden, so much may be.
  expect(likeDrawn / faulty).toBeLessThanOrEqual(0.25);
  expect(unseen / (unseen + faulty)).toBeLessThanOrEqual(0.3);
  expect(asDrawn / sound).toBeGreaterThanOrEqual(0.98);
});
