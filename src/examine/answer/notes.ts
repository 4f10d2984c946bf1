import type { Question } from "../question.ts";
import { isHeard } from "../takes/heard.ts";

/** What to bear in mind of takes made so. */
export function notesOn({ takes, rig }: Question): string[] {
  const laid = takes.filter(({ through }) => through !== "jack");
  const hasExciter = laid.length > 0;
  return [
    ...(hasExciter
      ? [
          "An exciter shows which way a coil is wound and joined, not which pole of its magnet is up: a compass shows that.",
        ]
      : [
          "At the jack alone a single coil is the same with its leads exchanged: a small coil laid over each pickup shows which way it is joined.",
        ]),
    ...(hasExciter && !laid.some(isHeard)
      ? [
          "The small coil is heard in no take, so that these say nothing: it was not driven, or the jack is shorted or leads nowhere, which a take through the resistor shows.",
        ]
      : []),
    ...(rig.isGainKnown
      ? []
      : ["Without a run of both channels on one point their gains are only known to a few per cent."]),
  ];
}

/** Of a guard too large for all of its departures to be weighed. */
export const weighedNotes = (weighed: number, all: number): string[] =>
  weighed < all ? [`The guard is large: of ${all} departures the ${weighed} commonest were weighed.`] : [];
