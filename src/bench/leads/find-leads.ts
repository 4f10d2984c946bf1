import type { Checkpoint } from "../../checkpoint.ts";
import { MAX_LABELLINGS_LISTED } from "../../limits.ts";
import { cannotTell } from "./cannot-tell.ts";
import { LEAD_CAUTIONS } from "./cautions.ts";
import { certainOf, rolesOf } from "./certain.ts";
import { doubtsAbout, isRepeated } from "./doubts.ts";
import type { KickSense, LeadsRequest } from "./leads-request.ts";
import { likeliest, type NextTest, nextTest } from "./next-test.ts";
import { METAL, type Question, type Test } from "./question.ts";
import { readQuestion } from "./read-question.ts";
import { CONVENTION, told } from "./tell.ts";
import { testWords } from "./test-words.ts";
import { testKey } from "./tests.ts";
import { type Labelling, weigh } from "./weigh.ts";
import { wiringKey, wiringOf } from "./wiring-words.ts";

/** What a pickup turned out to be, every labelling weighed. */
export interface Found {
  readonly question: Question;
  /** Best first; together 1. */
  readonly labellings: readonly Labelling[];
}

/** Under this a labelling is one of those not listed. */
const LISTED_FROM = 1e-3;

/** Names in place of numbers: a test as a request has it. */
function asAsked({ leads, rows }: Question, test: Test) {
  if (test.kind === "compass") return { kind: "compass" as const, row: rows[test.row]! };
  if (test.kind === "ohms")
    return test.b === METAL
      ? { kind: "metal" as const, lead: leads[test.a]! }
      : { kind: "reading" as const, between: [leads[test.a]!, leads[test.b]!] as const };
  return {
    kind: "kick" as const,
    row: rows[test.row]!,
    between: [leads[test.plus]!, leads[test.minus]!] as const,
  };
}

function nextTold(question: Question, next: NextTest | null) {
  if (!next) return null;
  const { test, bits, outcomes } = next;
  return { test: asAsked(question, test), bits, outcomes, ...testWords(question, test) };
}

const COVERED = 0.999;
const MOST_WIRED = 1000;

/** Each test in doubt once, however often it was made. */
function doubtsTold(question: Question, best: Labelling) {
  const doubts = doubtsAbout(question, best);
  const keys = doubts.map(({ test }) => testKey(test));
  return doubts
    .filter((_, index) => keys.indexOf(keys[index]!) === index)
    .map(({ path, test }) => {
      const advice = isRepeated(question, test)
        ? "It was made more than once: look for what is wrong with another result, or whether a coil is open."
        : "Do it again.";
      return {
        path,
        text: `${testWords(question, test).label}: the likeliest labelling takes this result for misread. ${advice}`,
      };
    });
}

/**
 * Weighs every way to label a pickup's leads by what was measured.
 * @param sense −1 where this needle goes the other way than the guard says
 * @throws PresolderError REQUEST_INVALID, naming the field
 */
export function findLeads(request: LeadsRequest, sense: KickSense, checkpoint: Checkpoint): Found {
  const question = readQuestion(request, sense);
  return { question, labellings: weigh(question, checkpoint) };
}

/** What is answered about a pickup by itself. */
export function tellLeads({ question, labellings }: Found) {
  const listed = labellings
    .slice(0, MAX_LABELLINGS_LISTED)
    .filter(({ probability }, index) => index === 0 || probability >= LISTED_FROM);
  const best = labellings[0]!;
  const roles = rolesOf(question, labellings);
  const key = wiringKey(question, best);
  const agreed = likeliest(labellings, COVERED, MOST_WIRED)
    .filter((each) => wiringKey(question, each) === key)
    .reduce((sum, { probability }) => sum + probability, 0);
  return {
    labellings: listed.map((labelling) => told(question, labelling)),
    notListed: {
      count: labellings.length - listed.length,
      probability: labellings.slice(listed.length).reduce((sum, { probability }) => sum + probability, 0),
    },
    leads: question.leads.map((lead, index) => ({ lead, may: roles[index]!.slice(0, 6) })),
    convention: CONVENTION,
    certain: certainOf(question, labellings, roles),
    cannotTell: cannotTell(question, labellings),
    doubts: doubtsTold(question, best),
    wiring: { ...wiringOf(question, best), agreed },
    next: nextTold(question, nextTest(question, labellings)),
    cautions: LEAD_CAUTIONS,
  };
}
