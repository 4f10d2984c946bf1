import { listed } from "../../english.ts";
import type { Pole, Question } from "./question.ts";
import { coilOf, type End, isFinish, type Place, type Structure } from "./structure.ts";
import type { Labelling } from "./weigh.ts";

export const DRAIN = "the metal alone (drain)";
export const NOWHERE = "joined to nothing (spare, or broken off)";

type Named = Pick<Question, "rows">;

export function coilWords({ rows }: Named, { coils }: Pick<Structure, "coils">, coil: number): string {
  return coils === 1 ? "the coil" : `the coil of the ${rows[coil]}`;
}

function endWords(question: Named, structure: Structure, end: End): string {
  const coil = coilOf(end);
  const broken = structure.broken[coil] ? ", which is open inside" : "";
  return `the ${isFinish(end) ? "finish" : "start"} of ${coilWords(question, structure, coil)}${broken}`;
}

/** What a place is: "start of the coil of the screws". */
export function placeWords(question: Named, structure: Structure, { ends, hasMetal }: Place): string {
  if (ends.length === 0) return DRAIN;
  const own = listed(ends.map((end) => endWords(question, structure, end)));
  const joined = ends.length > 1 ? `the joint inside of ${own}` : own;
  return hasMetal ? `${joined}, with the metal` : joined;
}

export function leadWords(
  question: Named,
  { structure, places }: Pick<Labelling, "structure" | "places">,
  lead: number,
) {
  const place = places[lead]!;
  return place < 0 ? NOWHERE : placeWords(question, structure, structure.places[place]!);
}

export function poleOf(magnets: number, coil: number): Pole {
  return (magnets >> coil) & 1 ? "south" : "north";
}

/** The leads at a place, by their names. */
export function leadsAt({ leads }: Pick<Question, "leads">, places: readonly number[], place: number): string[] {
  return leads.filter((_, lead) => places[lead] === place);
}

/** "red" or "red with white", of leads that are one. */
export const together = (names: readonly string[]) => names.join(" with ");
