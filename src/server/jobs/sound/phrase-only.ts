import { faultAt } from "../../../errors.ts";
import type { Playing } from "../../../render/playing.ts";
import { isTestSignal } from "../../../render/signals.ts";

/**
 * How a phrase is played, as the request says it. @param signal its name; undefined where there is none
 * @throws PresolderError REQUEST_INVALID where that is said of something else than a phrase
 */
export function playingOf(signal: string | undefined, { hand, strings }: Playing): Playing {
  const given = hand !== undefined ? "hand" : strings !== undefined ? "strings" : undefined;
  if (given !== undefined && (signal === undefined || isTestSignal(signal))) {
    const found = signal === undefined ? "no phrase" : `"${signal}"`;
    throw faultAt(
      "REQUEST_INVALID",
      given,
      `"${hand ?? strings}" given beside ${found}; only a phrase is played by a hand on strings`,
    );
  }
  return { ...(hand && { hand }), ...(strings && { strings }) };
}
