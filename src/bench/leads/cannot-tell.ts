import { listed } from "../../english.ts";
import { indistinctFromFirst } from "./indistinct.ts";
import { likeliest } from "./next-test.ts";
import type { Question } from "./question.ts";
import type { Labelling } from "./weigh.ts";
import { leadWords } from "./words.ts";

const COVERED = 0.999;
const MOST = 2000;

/** Of one lead; what comes after them is told by the labellings. */
const MOST_WAYS = 3;

function whyOpen(alike: readonly Labelling[], leads: readonly string[]): string {
  const isHidden = alike.every(
    ({ structure }) => structure.arrangement === "series" && !structure.broken.some(Boolean),
  );
  if (isHidden)
    return "The coils' joint is not brought out, so that it makes no difference to how the pickup is wired.";
  return `Only the eye tells: look inside where ${listed(leads)} ${leads.length > 1 ? "go" : "goes"}, pulling at nothing.`;
}

/** What no further reading, tap or compass can decide about the best labelling, in sentences. */
export function cannotTell(question: Question, labellings: readonly Labelling[]): string[] {
  const alike = indistinctFromFirst(question, likeliest(labellings, COVERED, MOST));
  if (alike.length < 2) return [];
  const told = question.leads.flatMap((lead, index) => {
    const ways = [...new Set(alike.map((labelling) => leadWords(question, labelling, index)))];
    return ways.length > 1 ? [{ lead, ways }] : [];
  });
  if (told.length === 0) return ["What lies inside, past every lead, can be one of several ways."];
  const sentences = told.map(
    ({ lead, ways }) => `No reading, tap or compass tells whether ${lead} is ${ways.slice(0, MOST_WAYS).join(" or ")}.`,
  );
  return [
    ...sentences,
    whyOpen(
      alike,
      told.map(({ lead }) => lead),
    ),
  ];
}
