import { POT_END_FRACTION } from "../../build-file/end-resistance.ts";
import { endShare } from "../../build-file/taper.ts";
import type { MeterModel, MeterState } from "./meter-model.ts";

/** What a pot in good order stays under, by the sheets that give ohms; more is allowed, and not usual. */
export const USUAL_POT_END_OHMS = 50;

/** Which wipers stand as far off their ends as data sheets allow. */
export type EndsRaised = "all" | "counter-clockwise";

/** The state with its wipers off the ends of their tracks by all that data sheets allow; lifted no-load tracks stay lifted. */
export function withPotEnds(state: MeterState, which: EndsRaised): MeterState {
  const most = which === "all" ? 1 - POT_END_FRACTION : 1;
  const fractions = state.fractions.map((x) => (x < 0 ? x : Math.min(most, Math.max(POT_END_FRACTION, x))));
  return { ...state, fractions };
}

/** The state with every wiper off the ends of its track by what the build says is left there. */
export function withOwnEnds({ parts }: MeterModel, state: MeterState): MeterState {
  const fractions = state.fractions.map((x, track) => {
    const end = endShare(parts.tracks[track]!.spec);
    return x < 0 ? x : Math.min(1 - end, Math.max(end, x));
  });
  return { ...state, fractions };
}
