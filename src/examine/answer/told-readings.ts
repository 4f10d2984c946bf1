import { ohmsText } from "../../bench/faults/answer/reading-words.ts";
import { isOpen } from "../../bench/meter/hobby-meter.ts";
import type { ReadingPlan } from "../../bench/meter/reading-plan.ts";
import type { Build } from "../../build-file/schema.ts";
import { Controls, rawSettings, settingsKey } from "../../build-file/settings.ts";
import { capitalised, listed } from "../../english.ts";
import type { Take } from "../takes/take.ts";
import { takeTitle } from "../takes/take-title.ts";
import { CONTRADICTS, type ForetoldReading } from "../weigh/foretold-readings.ts";
import type { MeterReadings } from "../weigh/meter-readings.ts";

/** So many takes are named that a reading contradicts. */
const MOST_NAMED = 3;

/** The takes that speak for the same as a reading: in its settings, or else with its switches so, or else all. */
function takesAgainst({ settings }: ReadingPlan, takes: readonly Take[]): readonly Take[] {
  const switchesOf = ({ switches }: ReadingPlan["settings"]) => JSON.stringify(Object.entries(switches).sort());
  const same = takes.filter((take) => settingsKey(take.settings) === settingsKey(settings));
  if (same.length > 0) return same;
  const near = takes.filter((take) => switchesOf(take.settings) === switchesOf(settings));
  return near.length > 0 ? near : takes;
}

const finite = (ohms: number) => (isOpen(ohms) ? null : ohms);

/** Each reading of the meter beside what the takes would make it read. @param foretold of the best answer */
export function toldReadings(
  build: Build,
  meter: MeterReadings,
  foretold: readonly ForetoldReading[],
  takes: readonly Take[],
) {
  const controls = new Controls(build);
  return foretold.map(({ ohms, off }, index) => {
    const plan = meter.judge.plans[index]!;
    const observation = meter.judge.observations[index]!;
    const title = plan.label;
    const agrees = off < CONTRADICTS;
    const against = agrees ? [] : takesAgainst(plan, takes).map((take) => takeTitle(build, take));
    const [shown, would] = [ohmsText(observation), ohmsText({ ohms: finite(ohms) ?? Number.POSITIVE_INFINITY })];
    const message = agrees
      ? `${capitalised(title)} shows ${shown}; these takes would make it ${would}, which agrees.`
      : `${capitalised(title)} shows ${shown}, where these takes would make it ${would}: it contradicts the ` +
        `${against.length === 1 ? "take" : "takes"} with ${listed(against.slice(0, MOST_NAMED))}.`;
    return {
      title,
      between: [...plan.between] as [string, string],
      settings: rawSettings(controls, plan.settings),
      shown: finite(observation.above ?? observation.ohms),
      foretold: finite(ohms),
      agrees,
      against,
      message,
    };
  });
}

export type ToldReading = ReturnType<typeof toldReadings>[number];
