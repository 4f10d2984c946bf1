import { mainPositions } from "../../bench/main-positions.ts";
import type { Build } from "../../build-file/schema.ts";
import { Controls, settingsKey, withControl } from "../../build-file/settings.ts";
import { affordableTakes } from "../effort.ts";
import type { Unknowns } from "../model/point.ts";
import type { Take } from "../takes/take.ts";
import type { Group } from "../weigh/groups.ts";
import { JackEvidence } from "../weigh/jack-evidence.ts";
import type { Weighed } from "../weigh/weighed.ts";
import { Weigher } from "../weigh/weigher.ts";
import type { PlannedSetting } from "./plan.ts";

/** Guards this far apart in a take, as chi-square, are told apart by it. */
const TOLD_APART = 12;
/** Of the impedance: what tolerances that no take has told yet may move it by. */
const UNTOLD = 0.08;
const MOST_LEADING = 8;
/** About an octave apart, so that each counts for itself. */
const FREQUENCIES_HZ = Float64Array.of(80, 200, 500, 1200, 2500, 5000, 9000, 14_000);
const ALONE = 1;
/** What a take must be expected to tell, as the chance that it parts two of the answers. */
const WORTH_IT = 0.02;

function candidates(build: Build, plan: readonly PlannedSetting[]): PlannedSetting[] {
  const controls = new Controls(build);
  const { main } = controls;
  const crossed = mainPositions(controls).flatMap(({ settings }) =>
    controls.pots.flatMap((pot) =>
      [0, 5].map((to): PlannedSetting => {
        const inMain = main ? [{ control: main.name, to: settings.switches[main.name]! }] : [];
        const moved = [...inMain, { control: pot, to }];
        return { settings: withControl(controls, settings, pot, to), moved, why: "" };
      }),
    ),
  );
  return [...plan, ...crossed];
}

/** What leads, each with its share of the belief. */
function leadingOf(groups: readonly Group[]): { weighed: Weighed; share: number }[] {
  const members = groups.flatMap((group) => {
    const top = Math.max(...group.members.map(({ score }) => score));
    const weights = group.members.map(({ score }) => Math.exp(score - top));
    const whole = weights.reduce((sum, each) => sum + each, 0);
    return group.members.map(({ weighed }, index) => ({ weighed, share: (group.share * weights[index]!) / whole }));
  });
  return members.sort((a, b) => b.share - a.share).slice(0, MOST_LEADING);
}

const keysOf = (taken: readonly Take[]) =>
  new Set(taken.flatMap(({ settings, through }) => (through === "jack" ? [settingsKey(settings)] : [])));

/** The takes of the plan that are not made yet. */
export function leftOfPlan(plan: readonly PlannedSetting[], taken: readonly Take[]): PlannedSetting[] {
  const known = keysOf(taken);
  return plan.filter(({ settings }) => !known.has(settingsKey(settings)));
}

/** The take at the jack that most likely parts the leading answers; undefined where none does. */
export function nextTake(
  build: Build,
  plan: readonly PlannedSetting[],
  unknowns: Unknowns,
  taken: readonly Take[],
  groups: readonly Group[],
  checkpoint: () => void,
): PlannedSetting | undefined {
  const leading = leadingOf(groups);
  if (leading.length < 2) return undefined;
  const known = keysOf(taken);
  const left = candidates(build, plan)
    .filter(({ settings }) => !known.has(settingsKey(settings)) && known.add(settingsKey(settings)))
    .slice(0, affordableTakes(build, leading.length + 1, FREQUENCIES_HZ.length));
  const settings = left.map((each) => each.settings);
  const weigher = new Weigher(build, settings, unknowns, []);
  let best: { planned: PlannedSetting; chance: number } | undefined;
  for (const [index, planned] of left.entries()) {
    checkpoint();
    const subjects = leading.map(({ weighed }) => weigher.subjectAt(weighed.departure, weighed.point));
    const empty = new Float64Array(FREQUENCIES_HZ.length);
    const blank = {
      settings: planned.settings,
      through: "jack",
      frequenciesHz: FREQUENCIES_HZ,
      hasReference: true,
    } as const;
    const at = new JackEvidence({ ...blank, re: empty, im: empty, sd: empty }, index, ALONE).predict(subjects[0]!);
    const evidence = new JackEvidence({ ...blank, re: at.re, im: at.im, sd: empty.map(() => 1e-3) }, index, ALONE);
    let chance = 0;
    for (const [i, one] of leading.entries())
      for (const [j, other] of leading.entries()) {
        if (j <= i) continue;
        const apart = evidence.apart(subjects[i]!, subjects[j]!, UNTOLD);
        chance += 2 * one.share * other.share * Math.min(1, apart / TOLD_APART);
      }
    if (chance > Math.max(WORTH_IT, (best?.chance ?? 0) * 1.05)) best = { planned, chance };
  }
  return best && { ...best.planned, why: "it tells the leading answers apart" };
}
