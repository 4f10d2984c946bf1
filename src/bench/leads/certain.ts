import { capitalised } from "../../english.ts";
import type { Question } from "./question.ts";
import type { Structure } from "./structure.ts";
import type { Labelling } from "./weigh.ts";
import { coilWords, DRAIN, leadsAt, NOWHERE, placeWords, poleOf, together } from "./words.ts";

/** Told as certain where at least so much of the belief agrees. */
const CERTAIN = 0.99;

export interface Role {
  readonly is: string;
  readonly probability: number;
}

/** Places by what they are, whatever structure they are in; worked out once a structure. */
class RoleBook {
  readonly words: string[] = [];
  readonly #question: Question;
  readonly #ids = new Map<string, number>();
  readonly #known = new Map<Structure, readonly number[]>();

  constructor(question: Question) {
    this.#question = question;
  }

  #idOf(words: string): number {
    const id = this.#ids.get(words) ?? this.words.push(words) - 1;
    this.#ids.set(words, id);
    return id;
  }

  /** The role of each place, that of no place last. */
  of(structure: Structure): readonly number[] {
    const known = this.#known.get(structure);
    if (known) return known;
    const words = [...structure.places.map((place) => placeWords(this.#question, structure, place)), NOWHERE];
    const ids = words.map((each) => this.#idOf(each));
    this.#known.set(structure, ids);
    return ids;
  }
}

/** What each lead may be, over all labellings, the likeliest first. */
export function rolesOf(question: Question, labellings: readonly Labelling[]): Role[][] {
  const book = new RoleBook(question);
  const shares: number[][] = question.leads.map(() => []);
  for (const { structure, places, probability } of labellings) {
    const roles = book.of(structure);
    for (const [lead, own] of shares.entries()) {
      const role = roles[places[lead]! < 0 ? roles.length - 1 : places[lead]!]!;
      own[role] = (own[role] ?? 0) + probability;
    }
  }
  return shares.map((own) =>
    book.words
      .map((is, role) => ({ is, probability: own[role] ?? 0 }))
      .filter(({ probability }) => probability > 0)
      .sort((a, b) => b.probability - a.probability),
  );
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

/** Which leads are the two ends of one coil, whichever coil it is, whichever end is its start and whatever else is on them. */
function pairs({ leads }: Question): Claim {
  return ({ structure, places }) =>
    Array.from({ length: structure.coils }, (_, coil) => {
      const [starts, finishes] = [2 * coil, 2 * coil + 1].map((end) =>
        leadsAt(
          { leads },
          places,
          structure.places.findIndex((place) => (place.ends as readonly number[]).includes(end)),
        ),
      );
      const state = structure.broken[coil] ? ", which is open inside" : "";
      return starts!.flatMap((a) =>
        finishes!.map((b) => {
          const [first, second] = leads.indexOf(a) < leads.indexOf(b) ? [a, b] : [b, a];
          return `${capitalised(first)} and ${second} are the two ends of one coil${state}.`;
        }),
      );
    }).flat();
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

/** What a claim says of the likeliest labelling, and nearly all the belief agrees with. */
function agreedOn(claim: Claim, labellings: readonly Labelling[]): string[] {
  const against = new Map(claim(labellings[0]!).map((text) => [text, 0]));
  for (const labelling of labellings) {
    if (against.size === 0) break;
    const own = claim(labelling);
    for (const [text, share] of against) {
      if (own.includes(text)) continue;
      if (share + labelling.probability > 1 - CERTAIN) against.delete(text);
      else against.set(text, share + labelling.probability);
    }
  }
  return [...against.keys()];
}

/** What all labellings that are still likely agree on. */
export function certainOf(question: Question, labellings: readonly Labelling[], roles: readonly Role[][]): string[] {
  const claims = [howJoined, pairs(question), metal(question), magnets(question)];
  const named = question.leads.flatMap((lead, index) => {
    const [best] = roles[index]!;
    return best && best.probability >= CERTAIN && best.is !== DRAIN ? [`${capitalised(lead)} is ${best.is}.`] : [];
  });
  return [...claims.flatMap((claim) => agreedOn(claim, labellings)), ...named];
}
