import { type Habits, habitsBetween } from "../../../bench/heights/habits/habits.ts";
import { heightsOf } from "../../../bench/heights/heights.ts";
import { type HeightsQuestion, readHeights } from "../../../bench/heights/question.ts";
import type { Build } from "../../../build-file/schema.ts";
import type { HeightsAnswer, HeightsRequestBody } from "../../../contract/bench/heights.ts";
import { readBuildAt } from "../../../contract/refusal.ts";
import type { Job, JobContext } from "../../work/job.ts";

interface HeightsJob {
  readonly question: HeightsQuestion;
  readonly from: Build | undefined;
}

function read({ build, from, ...rest }: HeightsRequestBody): HeightsJob {
  return {
    question: readHeights(readBuildAt("build", build), rest),
    from: from === undefined ? undefined : readBuildAt("from", from),
  };
}

function habitsOf({ question, from }: HeightsJob, checkpoint: () => void): Habits | null {
  return from ? habitsBetween(from, question.build, question.pickups, checkpoint) : null;
}

function run(job: HeightsJob, { checkpoint }: JobContext): HeightsAnswer {
  return { ...heightsOf(job.question, checkpoint), habits: habitsOf(job, checkpoint) };
}

/** Laws and turns of more rows than a first session has take longer than a glance. */
const FEW_ROWS = 12;

export const heightsJob = {
  read,
  run,
  size: ({ question, from }) => (from || question.rows.length > FEW_ROWS ? "large" : "small"),
  gate: "render",
} satisfies Job<HeightsJob, HeightsAnswer>;
