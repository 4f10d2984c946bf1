import { CATALOGUE } from "../../build-file/catalogue.ts";
import { expandBuild, hasPlan } from "../../build-file/expand.ts";
import { readBuild } from "../../build-file/read-build.ts";
import type { BuildInput } from "../../build-file/schema.ts";
import type { PageData, StartGuard, StartScenario } from "../../contract/page-data.ts";
import { HAND_ENTRIES, STRING_ENTRIES } from "../../render/playing.ts";
import { DEFAULT_SIGNAL, SIGNALS } from "../../render/signals.ts";
import { readScenarios } from "./scenario-shelf.ts";

/** Shows most of what the page can do: a lever, two tones, a push-pull and a build to compare with. */
const FIRST_SCENARIO = "hss-250k-or-500k";
/** What a customary guard hangs on until something else is said. */
const USUAL_CABLE = { length: "3m", capacitance: "100p" };

const longForm = (input: unknown): BuildInput => (hasPlan(input) ? expandBuild(input) : (input as BuildInput));

const named = ({ id, title }: StartGuard) => ({ id, title });

function startPlans(): StartGuard[] {
  return CATALOGUE.plans.map(({ id, title, plan }) => {
    return { id, title, build: longForm({ presolder: 1, title, plan, cable: USUAL_CABLE }) };
  });
}

/**
 * The data that comes with the page.
 * @param directory of the scenarios
 * @throws Error naming the file that is no scenario; PresolderError BUILD_INVALID
 */
export function makePageData(directory: string): PageData {
  const scenarios = [...readScenarios(directory).values()].map(
    ({ id, title, description, question, build, compareWith, settings, sweep }): StartScenario => ({
      id,
      title,
      description,
      question,
      build: longForm(build),
      ...(compareWith ? { compareWith: longForm(compareWith) } : {}),
      ...(settings ? { settings } : {}),
      ...(compareWith && sweep ? { sweep } : {}),
    }),
  );
  const scenario = scenarios.find(({ id }) => id === FIRST_SCENARIO) ?? scenarios[0]!;
  const compareWith = scenario.compareWith ? readBuild(scenario.compareWith) : null;
  const plans = startPlans();
  return {
    guards: { scenarios, plans },
    offer: {
      scenarios: scenarios.map(named),
      plans: plans.map(named),
      signals: SIGNALS,
      hands: HAND_ENTRIES,
      strings: STRING_ENTRIES,
    },
    first: { scenario, build: readBuild(scenario.build), compareWith, signal: DEFAULT_SIGNAL },
  };
}
