import { capitalised } from "../../english.ts";
import { errorsOfCoils, ohmsOfCoils } from "./ohms-at-20.ts";
import type { Question } from "./question.ts";
import type { End } from "./structure.ts";
import type { Labelling } from "./weigh.ts";
import { leadsAt, leadWords, poleOf, together } from "./words.ts";

export const CONVENTION =
  "Which end of a coil is its start and which its finish nobody can tell from outside: a coil wound the other way with its ends exchanged is the same to every meter, string and hum. So every coil is called forward here, and its ends are named to match: with + on the finish and − on the start, a forward coil under a north top kicks the needle up as the tip is pulled off.";

function leadAt(question: Question, { structure, places }: Labelling, end: End): string | null {
  const at = structure.places.findIndex(({ ends }) => ends.includes(end));
  return together(leadsAt(question, places, at)) || null;
}

/** A labelling as it is answered. */
export function told(question: Question, labelling: Labelling) {
  const { structure, places, magnets, probability } = labelling;
  const ohms = ohmsOfCoils(labelling, question.temperature);
  const errors = errorsOfCoils(labelling);
  const leads = question.leads.map((lead, index) => ({ lead, is: leadWords(question, labelling, index) }));
  const tap = structure.places.findIndex(({ ends }) => ends.length === 2);
  const isTied = structure.metalAt >= 0 && structure.places[structure.metalAt]!.ends.length > 0;
  return {
    probability,
    coils: Array.from({ length: structure.coils }, (_, coil) => ({
      row: question.rows[coil]!,
      start: leadAt(question, labelling, (2 * coil) as End),
      finish: leadAt(question, labelling, (2 * coil + 1) as End),
      winding: "forward" as const,
      magnet: poleOf(magnets, coil),
      resistance: structure.broken[coil] ? null : ohms[coil]!,
      resistanceError: structure.broken[coil] ? null : errors[coil]!,
      broken: structure.broken[coil]!,
    })),
    joined: structure.arrangement,
    tap: structure.arrangement === "series" ? together(leadsAt(question, places, tap)) || null : null,
    metal: {
      at: structure.metalAt < 0 ? ("unreached" as const) : isTied ? ("tied" as const) : ("drain" as const),
      leads: structure.metalAt < 0 ? [] : leadsAt(question, places, structure.metalAt),
    },
    leads,
    text: `${capitalised(leads.map(({ lead, is }) => `${lead} is ${is}`).join("; "))}.`,
  };
}

export type Told = ReturnType<typeof told>;
