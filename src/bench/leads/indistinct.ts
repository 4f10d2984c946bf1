import { kickExpected } from "./likelihood.ts";
import type { Question } from "./question.ts";
import { kickTests, ohmsTests } from "./tests.ts";
import { type Labelling, pathOf } from "./weigh.ts";

const SWAPPED: Readonly<Record<string, string>> = { first: "second", second: "first" };

/**
 * What a labelling makes of every test there is. Two with the same cannot be told apart by any of them: each test has the same
 * chances of every result under both. Nothing is known of either coil's resistance beforehand, so that readings which differ in
 * the coils' names alone are the same.
 */
export function outcomesOf({ leads, rows, hasMetal }: Question, labelling: Labelling): string {
  const { structure, paths, places, magnets } = labelling;
  const seen = ohmsTests(leads.length, hasMetal).map((test) => pathOf(labelling, test).between as string);
  const swapped = seen.map((between) => SWAPPED[between] ?? between);
  const readings = [seen.join(), swapped.join()].sort()[0];
  const kicks = kickTests(leads.length, rows.length).map(({ row, plus, minus }) => {
    const { sort, sign } = kickExpected(structure, paths.of(places[minus]!, places[plus]!), row, magnets);
    return `${sort}${sign}`;
  });
  return `${structure.coils} ${readings} ${kicks.join()} ${magnets}`;
}

/** Of labellings, those that no test tells from the first. */
export function indistinctFromFirst(question: Question, labellings: readonly Labelling[]): Labelling[] {
  const [first] = labellings;
  if (!first) return [];
  const own = outcomesOf(question, first);
  return labellings.filter((each) => outcomesOf(question, each) === own);
}
