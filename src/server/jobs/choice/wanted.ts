import { planFormSchema } from "../../../build-file/expand.ts";
import { nearestWord } from "../../../build-file/nearest.ts";
import type { PlanInput } from "../../../build-file/plans/plan-schema.ts";
import { PLAN_PRESETS } from "../../../build-file/plans/presets.ts";
import { parseOrThrow } from "../../../build-file/zod-tools.ts";
import type { Surroundings } from "../../../choice/wanted/candidate.ts";
import { contradictionsIn } from "../../../choice/wanted/contradictions.ts";
import { noPlaceText, type Parsed, parseWishes } from "../../../choice/wanted/parse-wishes.ts";
import type { Shape } from "../../../choice/wanted/space/shapes.ts";
import { USUAL_VALUES, type Values } from "../../../choice/wanted/space/values.ts";
import { searchWanted } from "../../../choice/wanted/wanted.ts";
import { COST_MEANING, wantedTold } from "../../../choice/wanted/wanted-answer.ts";
import { askFor } from "../../../choice/wanted/wish.ts";
import type { WantedAnswer, WantedBody } from "../../../contract/wanted.ts";
import { faultAt } from "../../../errors.ts";
import { MAX_WISHES } from "../../../limits.ts";
import type { Job, JobContext } from "../../work/job.ts";
import { pluckedDrive } from "../sound/plucked-drive.ts";

interface WantedJob extends Parsed {
  readonly starts: readonly Shape[];
  readonly pickups: WantedBody["pickups"];
  readonly values: Values;
  readonly steps: boolean;
  readonly surroundings: Surroundings;
}

/** What a guard customarily hangs on; common practice, no source. */
const USUAL_CABLE = { length: "3m", capacitance: "100p" };
const USUAL_LOAD = { resistance: "1M", capacitance: "100p" };

/** @throws PresolderError naming `text` or `wishes` where there is neither, both, or no word that is known */
function wishesOf({ text, wishes }: WantedBody): Parsed {
  if ((text === undefined) === (wishes === undefined))
    throw faultAt("REQUEST_INVALID", "wishes", "expected either `wishes` or, in words, `text`");
  if (wishes) {
    const asked = wishes.map(({ where, asks }) => ({
      where,
      asks: asks.map(({ word, targets }) => askFor(word, targets)),
    }));
    return { wishes: asked, unknown: [], noPlaces: [], notes: [] };
  }
  const parsed = parseWishes(text!);
  const [said] = parsed.noPlaces;
  if (said !== undefined) throw faultAt("REQUEST_INVALID", "text", noPlaceText(said));
  const unknown = parsed.unknown.map(({ said }) => `"${said}"`).join(", ");
  if (parsed.wishes.length === 0)
    throw faultAt("REQUEST_INVALID", "text", `holds no word that is known${unknown === "" ? "" : ` (${unknown})`}`);
  if (parsed.wishes.length <= MAX_WISHES) return parsed;
  const message = `names ${parsed.wishes.length} places; expected at most ${MAX_WISHES}`;
  throw faultAt("LIMIT_EXCEEDED", "text", message);
}

function ownShape(plan: unknown): Shape[] {
  if (plan === undefined) return [];
  parseOrThrow(planFormSchema.shape.plan, plan, "BUILD_INVALID", ["plan"]);
  return [{ from: "your plan", plan: plan as PlanInput, changes: [] }];
}

function startsOf({ starts, plan }: WantedBody): Shape[] {
  const own = ownShape(plan);
  // Whoever gives a plan and no starts asks about that plan.
  const wanted = starts ?? (own.length > 0 ? [] : "all");
  const customary = wanted === "all" ? PLAN_PRESETS : PLAN_PRESETS.filter(({ id }) => wanted.includes(id));
  return [...own, ...customary.map(({ title, plan: each }) => ({ from: title, plan: each, changes: [] }))];
}

function valuesOf({ volume, tone, cap, bleed }: WantedBody["values"]): Values {
  const own = { volume, tone, cap, bleed: bleed?.map((each) => (each === "none" ? null : each)) };
  const given = Object.fromEntries(Object.entries(own).filter(([, list]) => list !== undefined));
  return { ...USUAL_VALUES, ...given };
}

/** @throws PresolderError naming a place of `pickups` that no guard begun with has */
function expectKnownPlaces(pickups: WantedBody["pickups"], starts: readonly Shape[]): void {
  const places = [...new Set(starts.flatMap(({ plan }) => Object.keys(plan.pickups)))];
  const stranger = Object.keys(pickups).find((place) => !places.includes(place));
  if (stranger === undefined) return;
  const message = `no guard begun with has a pickup there; expected ${places.join(", ")}${nearText(stranger, places)}`;
  throw faultAt("REQUEST_INVALID", `pickups.${stranger}`, message);
}

const nearText = (written: string, known: readonly string[]) => {
  const near = nearestWord(written, known);
  return near === undefined ? "" : `; did you mean "${near}"?`;
};

function read(body: WantedBody): WantedJob {
  const starts = startsOf(body);
  expectKnownPlaces(body.pickups, starts);
  return {
    ...wishesOf(body),
    starts,
    pickups: body.pickups,
    values: valuesOf(body.values),
    steps: body.switches,
    surroundings: { cable: USUAL_CABLE, load: USUAL_LOAD, ...given(body) },
  };
}

function given({ cable, load }: WantedBody): Surroundings {
  return { ...(cable ? { cable } : {}), ...(load ? { load } : {}) };
}

function run(job: WantedJob, { checkpoint }: JobContext): WantedAnswer {
  const { wishes, unknown, notes, surroundings } = job;
  const result = searchWanted({ ...job, driveOf: pluckedDrive }, { checkpoint });
  const { contradictions, ...told } = wantedTold(result, wishes, surroundings);
  return {
    understood: { wishes, unknown, notes, contradictions: contradictionsIn(wishes) },
    ...told,
    costMeaning: COST_MEANING,
  } as WantedAnswer;
}

export const wantedJob = {
  read,
  run,
  size: () => "large",
  gate: "render",
} satisfies Job<WantedJob, WantedAnswer>;
