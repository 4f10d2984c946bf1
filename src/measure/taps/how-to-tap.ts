import type { Build } from "../../build-file/schema.ts";
import { settingGroups } from "./cell-groups.ts";
import { STEP_SECONDS, type TapStep } from "./plan-taps.ts";
import { rowCalled, settingWords } from "./tap-words.ts";

/** One step of the plan in words. */
export interface WordedStep extends TapStep {
  readonly position: string;
  readonly row: string;
}

export function wordedSteps(build: Build, steps: readonly TapStep[]): WordedStep[] {
  return steps.map((step) => ({ ...step, position: settingWords(build, step.settings), row: rowCalled(build, step) }));
}

/** Nothing where all were tried. @param leftOut how many steps one take has no room for */
export const leftOutWords = (leftOut: number): string[] =>
  leftOut > 0 ? [`One take has no room for ${leftOut} more steps, of the last switches: they stay untried.`] : [];

/** Common practice, no source. @param leftOut how many steps the take has no room for */
export function howToTap(steps: readonly TapStep[], leftOut: number): string[] {
  const positions = settingGroups(steps.map((step) => ({ heard: { step } }))).length;
  const minutes = Math.ceil((steps.at(-1)!.at + STEP_SECONDS) / 6) / 10;
  return [
    "Plug the guitar into the interface's instrument input, every dial at 10. Damp the strings with a cloth.",
    "Take a small steel screwdriver. Leave covers on, or lay tape over an open coil, and hold the tip back: a magnet that snatches it tears the wire. Any pole of a row will do, the same in every position.",
    "Set the gain so that the loudest tap peaks between −20 and −6 dB.",
    `Record all of it in one take: ${steps.length} steps in ${positions} ${positions === 1 ? "position" : "positions"}, ${minutes} min. In each step touch the pole and lift the tool off, crisply, three times within two seconds, then pause.`,
    "Keep to the times of the plan, counted from the first tap: a row that is silent leaves nothing behind but its time.",
    ...leftOutWords(leftOut),
  ];
}

/** Beside the usual ones. Common practice, no source. */
export const TAP_CAUTIONS: readonly string[] = [
  "Taps are loud: nothing but the interface is on the guitar's jack. Mute loudspeakers and take headphones off, or begin at low volume.",
  "Switch the interface's phantom power off before anything is plugged in.",
];
