import { faultAt } from "../errors.ts";
import { bentUp } from "./pitch-curve.ts";
import { type Note, type Phrase, stepped, strummed } from "./score.ts";

/** Silence before the first note, so that a player has started before the sound does. */
const LEAD_IN_SECONDS = 0.05;

/** Frets from string 1 down. */
const E_MAJOR = [0, 0, 1, 2, 2, 0];
const A_MAJOR = [0, 2, 2, 2, 0, null];

function singlePluck(): Phrase {
  const notes = stepped(LEAD_IN_SECONDS, 1, [[0, 4, 0, 3.2, 0.9]]);
  return { name: "pluck", description: "One note, the open D string", seconds: 3.6, notes };
}

function openStrum(): Phrase {
  const stroke = { direction: "down", spreadSeconds: 0.014 } as const;
  const notes = [
    ...strummed({ ...stroke, timeSeconds: LEAD_IN_SECONDS, frets: E_MAJOR, velocity: 0.9, ringSeconds: 2.35 }),
    ...strummed({ ...stroke, timeSeconds: 2.45, frets: A_MAJOR, velocity: 0.85, ringSeconds: 1.2 }),
    ...strummed({
      timeSeconds: 3.05,
      frets: [0, 2, 2, 2, null, null],
      velocity: 0.6,
      ringSeconds: 0.6,
      direction: "up",
      spreadSeconds: 0.009,
    }),
    ...strummed({ ...stroke, timeSeconds: 3.65, frets: E_MAJOR, velocity: 0.95, ringSeconds: 2.9 }),
  ];
  return { name: "strum", description: "Open E and A major chords, strummed and left to ring", seconds: 7, notes };
}

function arpeggio(): Phrase {
  // Columns: string and fret. C major over G, then E minor, each note ringing into the next.
  const order: [number, number][] = [
    [5, 3],
    [4, 2],
    [3, 0],
    [2, 1],
    [1, 0],
    [2, 1],
    [3, 0],
    [4, 2],
    [6, 0],
    [4, 2],
    [3, 0],
    [2, 0],
    [1, 0],
    [2, 0],
    [3, 0],
    [4, 2],
  ];
  const steps = order.map(
    ([string, fret], beat) => [beat, string, fret, Math.min(8, 18 - beat), beat % 8 === 0 ? 0.9 : 0.7] as const,
  );
  const notes = stepped(LEAD_IN_SECONDS, 0.36, steps);
  return { name: "arpeggio", description: "C major and E minor, one string after the other", seconds: 7, notes };
}

function singleLine(): Phrase {
  const notes = stepped(LEAD_IN_SECONDS, 0.3, [
    [0, 2, 13, 1, 0.8],
    [1, 2, 15, 1, 0.75],
    [2, 1, 12, 2, 0.9],
    [4, 1, 15, 1, 0.8],
    [5, 1, 12, 1, 0.7],
    [6, 2, 15, 2, 0.85],
    [8, 3, 14, 1, 0.8],
    [9, 2, 13, 1, 0.75],
    [10, 2, 15, 1, 0.8],
    [11, 1, 14, 1, 0.8],
    [12, 1, 17, 4, 0.95],
    [16, 1, 15, 1, 0.75],
    [17, 1, 12, 4, 0.9],
  ]);
  return { name: "single-line", description: "A single line above the twelfth fret", seconds: 6.8, notes };
}

function mutedRiff(): Phrase {
  const hits: [number, number, number, number][] = [
    [0, 6, 0, 1],
    [1, 6, 0, 0.75],
    [2, 6, 3, 0.9],
    [3, 6, 0, 0.75],
    [4, 5, 0, 0.9],
    [5, 6, 0, 0.75],
    [6, 5, 2, 0.9],
    [7, 5, 0, 0.8],
    [8, 6, 0, 1],
    [9, 6, 0, 0.75],
    [10, 6, 5, 0.9],
    [11, 6, 3, 0.85],
    [12, 6, 0, 1],
    [13, 6, 0, 0.75],
    [14, 6, 0, 0.8],
    [15, 6, 0, 1],
  ];
  const steps = hits.map(
    ([beat, string, fret, velocity]) => [beat, string, fret, beat === 15 ? 4 : 0.9, velocity] as const,
  );
  const notes = stepped(LEAD_IN_SECONDS, 0.24, steps).map(
    (note): Note => ({ ...note, muted: true, pluckMetres: 0.07 }),
  );
  return { name: "muted-riff", description: "A low riff under the palm", seconds: 5, notes };
}

function doubleStops(): Phrase {
  // Thirds of G major on strings 2 and 3, then sixths on 1 and 3.
  const pairs: [number, [number, number], [number, number], number][] = [
    [0, [3, 12], [2, 12], 1.9],
    [2, [3, 14], [2, 13], 0.95],
    [3, [3, 16], [2, 15], 1.9],
    [5, [3, 14], [2, 13], 0.95],
    [6, [3, 12], [2, 12], 1.9],
    [8, [3, 4], [1, 3], 1.9],
    [10, [3, 5], [1, 5], 0.95],
    [11, [3, 7], [1, 7], 0.95],
    [12, [3, 12], [1, 10], 3.5],
  ];
  const steps = pairs.flatMap(([beat, low, high, length]) => [
    [beat, ...low, length, 0.85] as const,
    [beat + 0.02, ...high, length - 0.02, 0.8] as const,
  ]);
  const notes = stepped(LEAD_IN_SECONDS, 0.4, steps);
  return {
    name: "double-stops",
    description: "Two strings at a time, thirds and sixths of G major",
    seconds: 6.6,
    notes,
  };
}

function heldBend(): Phrase {
  const notes: Note[] = [
    { timeSeconds: LEAD_IN_SECONDS, string: 3, fret: 14, velocity: 0.8, durationSeconds: 0.45 },
    {
      timeSeconds: 0.5,
      string: 2,
      fret: 15,
      velocity: 0.9,
      durationSeconds: 2,
      pitch: bentUp(2, 0.15, 0.4),
    },
    { timeSeconds: 2.55, string: 2, fret: 15, velocity: 0.75, durationSeconds: 0.4 },
    { timeSeconds: 3, string: 2, fret: 12, velocity: 0.8, durationSeconds: 0.4 },
    {
      timeSeconds: 3.45,
      string: 3,
      fret: 14,
      velocity: 0.9,
      durationSeconds: 2.1,
      pitch: bentUp(2, 0.2, 0.6),
    },
  ];
  return { name: "bend", description: "Notes bent up a whole tone and held", seconds: 6, notes };
}

/** Scores of the project's own, plain scale and chord material; the first is what a preview plays unless told otherwise. */
export const PHRASES: readonly Phrase[] = [
  openStrum(),
  singlePluck(),
  arpeggio(),
  singleLine(),
  mutedRiff(),
  doubleStops(),
  heldBend(),
];

export const DEFAULT_PHRASE_NAME = "strum";

export const PHRASE_NAMES: readonly string[] = PHRASES.map((phrase) => phrase.name);

/** @throws NOT_FOUND naming the phrases there are. */
export function phraseNamed(name: string): Phrase {
  const phrase = PHRASES.find((candidate) => candidate.name === name);
  if (phrase) return phrase;
  throw faultAt("NOT_FOUND", "signal", `no phrase "${name}"; there are ${PHRASE_NAMES.join(", ")}`);
}
