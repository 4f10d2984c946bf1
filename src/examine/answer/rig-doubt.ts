import { isHeard } from "../takes/heard.ts";
import type { Take } from "../takes/take.ts";

/** One point gives both inputs the same at every frequency; an open jack's own input is already turned by its lead's capacitance. */
const SAME_WITHIN = 0.01;
/** What their knobs may differ by. */
const GAIN_WITHIN = 0.1;

type Heard = Pick<Take, "through" | "re" | "im" | "sd">;

function isSame({ re, im }: Heard): boolean {
  const mean = re.reduce((sum, each) => sum + each, 0) / re.length;
  return Math.abs(mean - 1) < GAIN_WITHIN && re.every((each, i) => Math.hypot(each - mean, im[i]!) < SAME_WITHIN);
}

/**
 * What to look at before the guard is opened, where all takes at the jack are as a plug in the wrong place makes them; undefined
 * where one of them is not.
 */
export function rigDoubt(takes: readonly Take[]): string | undefined {
  const jack = takes.filter(({ through }) => through === "jack");
  if (jack.length === 0) return undefined;
  const check = "Before anything is opened, look at the rig and record a take again";
  if (!jack.some(isHeard))
    return `${check}: hardly anything is heard behind the resistor in any take, as where that input is not plugged in, or muted.`;
  if (jack.every(isSame))
    return `${check}: both inputs hear the same in every take, as where the resistor does not lie between them, or the jack's plug is out.`;
  return undefined;
}
