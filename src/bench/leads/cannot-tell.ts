import { listed } from "../../english.ts";
import { indistinctFromFirst } from "./indistinct.ts";
import { likeliest } from "./next-test.ts";
import type { Question } from "./question.ts";
import type { Labelling } from "./weigh.ts";
import { leadWords } from "./words.ts";

const COVERED = 0.999;
const MOST = 2000;

/** What no further reading, tap or compass can decide about the best labelling, in sentences. */
export function cannotTell(question: Question, labellings: readonly Labelling[]): string[] {
  const alike = indistinctFromFirst(question, likeliest(labellings, COVERED, MOST));
  if (alike.length < 2) return [];
  const open = question.leads.flatMap((lead, index) => {
    const ways = [...new Set(alike.map((labelling) => leadWords(question, labelling, index)))];
    return ways.length > 1 ? [`${lead} is ${ways.slice(0, -1).join(", or ")}, or ${ways.at(-1)}`] : [];
  });
  const told = open.map((text) => `No reading, tap or compass tells whether ${text}.`);
  const { structure } = alike[0]!;
  const isHidden =
    structure.arrangement === "series" &&
    !structure.broken.some(Boolean) &&
    alike.every((each) => each.structure.arrangement === "series");
  const inner = new Set(alike.map((each) => JSON.stringify(each.structure.places.map(({ ends }) => ends)))).size > 1;
  if (open.length === 0) return inner ? ["What lies inside, past every lead, can be one of several ways."] : [];
  const why = isHidden
    ? "The coils' joint is not brought out, so it makes no difference to how the pickup is wired."
    : `It stays open for ${listed(question.leads.filter((_, index) => new Set(alike.map((each) => leadWords(question, each, index))).size > 1))}: look where ${open.length === 1 ? "it goes" : "they go"}.`;
  return [...told, why];
}
