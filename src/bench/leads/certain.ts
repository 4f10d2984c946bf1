import { capitalised } from "../../english.ts";
import type { Question } from "./question.ts";
import type { Labelling } from "./weigh.ts";
import { coilWords, leadsAt, leadWords, poleOf, together } from "./words.ts";

/** Told as certain where at least so much of the belief agrees. */
export const CERTAIN = 0.99;

export interface Role {
  readonly is: string;
  readonly probability: number;
}

/** What each lead may be, over all labellings, the likeliest first. */
export function rolesOf(question: Question, labellings: readonly Labelling[]): Role[][] {
  const words = new Map<string, string>();
  return question.leads.map((_, lead) => {
    const shares = new Map<string, number>();
    for (const labelling of labellings) {
      const { structure, places } = labelling;
      const place = places[lead]!;
      const at = structure.places[place];
      const key = at
        ? `${structure.coils} ${at.ends} ${at.ends.map((end) => structure.broken[end >> 1])} ${at.hasMetal}`
        : "nothing";
      if (!words.has(key)) words.set(key, leadWords(question, labelling, lead));
      shares.set(key, (shares.get(key) ?? 0) + labelling.probability);
    }
    return [...shares]
      .map(([key, probability]) => ({ is: words.get(key)!, probability }))
      .sort((a, b) => b.probability - a.probability);
  });
}

type Claim = (labelling: Labelling) => string[];

const howJoined: Claim = ({ structure }) => {
  const words = {
    one: "There is one coil.",
    apart: "There are two coils, and nothing joins them inside.",
    series: "There are two coils, joined in a row inside.",
    parallel: "There are two coils, joined side by side inside.",
  };
  return [words[structure.arrangement]];
};

/** Which leads are the two ends of one coil, whichever coil it is and whichever end is its start. */
function pairs({ leads }: Question): Claim {
  return ({ structure, places }) =>
    Array.from({ length: structure.coils }, (_, coil) => {
      const ends = [2 * coil, 2 * coil + 1].map((end) =>
        leadsAt(
          { leads },
          places,
          structure.places.findIndex((place) => (place.ends as readonly number[]).includes(end)),
        ),
      );
      if (ends.some((each) => each.length === 0)) return undefined;
      const names = ends.map(together).sort((a, b) => leads.indexOf(a) - leads.indexOf(b));
      const state = structure.broken[coil] ? ", which is open inside" : "";
      return `${capitalised(names[0]!)} and ${names[1]} are the two ends of one coil${state}.`;
    }).filter((text) => text !== undefined);
}

function magnets(question: Question): Claim {
  return ({ structure, magnets: tops }) =>
    Array.from(
      { length: structure.coils },
      (_, coil) => `The top of ${coilWords(question, structure, coil)} is a ${poleOf(tops, coil)} pole.`,
    );
}

const metal =
  ({ leads }: Question): Claim =>
  ({ structure, places }) => {
    if (structure.metalAt < 0) return [];
    const names = together(leadsAt({ leads }, places, structure.metalAt));
    const isDrain = structure.places[structure.metalAt]!.ends.length === 0;
    return [
      isDrain
        ? `${capitalised(names)} is joined to the metal alone: the drain.`
        : `The metal is joined to ${names} inside.`,
    ];
  };

/** What all labellings that are still likely agree on. */
export function certainOf(question: Question, labellings: readonly Labelling[], roles: readonly Role[][]): string[] {
  const shares = new Map<string, number>();
  const claims = [howJoined, pairs(question), metal(question), magnets(question)];
  for (const labelling of labellings)
    for (const text of claims.flatMap((claim) => claim(labelling)))
      shares.set(text, (shares.get(text) ?? 0) + labelling.probability);
  const agreed = [...shares].filter(([, share]) => share >= CERTAIN).map(([text]) => text);
  const named = question.leads.flatMap((lead, index) => {
    const [best] = roles[index]!;
    return best && best.probability >= CERTAIN ? [`${capitalised(lead)}: ${best.is}.`] : [];
  });
  return [...agreed, ...named];
}
