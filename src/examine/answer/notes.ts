import type { Question } from "../question.ts";

/** What to bear in mind of takes made so. */
export function notesOn({ takes, rig }: Question): string[] {
  const hasExciter = takes.some(({ through }) => through !== "jack");
  return [
    ...(hasExciter
      ? [
          "An exciter shows which way a coil is wound and joined, not which pole of its magnet is up: a compass shows that.",
        ]
      : [
          "At the jack alone a single coil is the same with its leads exchanged: a small coil laid over each pickup shows which way it is joined.",
        ]),
    ...(rig.isGainKnown
      ? []
      : ["Without a run of both channels on one point their gains are only known to a few per cent."]),
  ];
}

/** Of a guard too large for all of its departures to be weighed. */
export const weighedNotes = (weighed: number, all: number): string[] =>
  weighed < all ? [`The guard is large: of ${all} departures the ${weighed} commonest were weighed.`] : [];
