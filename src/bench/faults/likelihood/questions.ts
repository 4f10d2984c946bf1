import { settingsKey } from "../../../build-file/settings.ts";
import { type MeterModel, type MeterState, meterStateOf } from "../../meter/meter-model.ts";
import type { ReadingPlan } from "../../meter/reading-plan.ts";
import { sweptTrackOf } from "../../meter/reading-taker.ts";
import type { Question } from "./predictor.ts";

/** Readings as questions; equal settings share one state, which is prepared once. */
export function questionsOf(model: MeterModel, plans: readonly ReadingPlan[]): Question[] {
  const states = new Map<string, MeterState>();
  const { lugs } = model.parts;
  return plans.map(({ between, settings, sweep }) => {
    const key = settingsKey(settings);
    const state = states.get(key) ?? meterStateOf(model, settings);
    states.set(key, state);
    const probes = {
      from: lugs.indexOf(between[0]),
      to: lugs.indexOf(between[1]),
      sweptTrack: sweptTrackOf(model, sweep),
    };
    return { state, probes };
  });
}
