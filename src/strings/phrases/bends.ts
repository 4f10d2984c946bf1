import { bentUp, slidOver, steppedTo, vibrato } from "../pitch-curve.ts";
import { LEAD_IN_SECONDS, type Note, type Phrase } from "../score.ts";

export function heldBend(): Phrase {
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

export function singingVibrato(): Phrase {
  const shake = { semitones: 0.4, cyclesPerSecond: 5.5 };
  const notes: Note[] = [
    {
      timeSeconds: LEAD_IN_SECONDS,
      string: 2,
      fret: 13,
      velocity: 0.85,
      durationSeconds: 1.5,
      pitch: vibrato({ ...shake, fromSeconds: 0.35, toSeconds: 1.5 }),
    },
    { timeSeconds: 1.6, string: 2, fret: 15, velocity: 0.8, durationSeconds: 0.45 },
    {
      timeSeconds: 2.1,
      string: 1,
      fret: 12,
      velocity: 0.9,
      durationSeconds: 1.4,
      pitch: vibrato({ ...shake, fromSeconds: 0.3, toSeconds: 1.4 }),
    },
    {
      timeSeconds: 3.6,
      string: 2,
      fret: 15,
      velocity: 0.95,
      durationSeconds: 2.6,
      pitch: [
        ...bentUp(2, 0.1, 0.4),
        ...vibrato({ semitones: 0.5, cyclesPerSecond: 5, fromSeconds: 0.8, toSeconds: 2.6 }, 2),
      ],
    },
  ];
  return {
    name: "vibrato",
    description: "Held notes with vibrato, the last one bent up a whole tone first",
    seconds: 6.6,
    notes,
  };
}

export function slidesAndLegato(): Phrase {
  const notes: Note[] = [
    {
      timeSeconds: LEAD_IN_SECONDS,
      string: 4,
      fret: 5,
      velocity: 0.9,
      durationSeconds: 1.4,
      pitch: slidOver(4, 0.25, 0.5),
    },
    {
      timeSeconds: 1.55,
      string: 3,
      fret: 7,
      velocity: 0.85,
      durationSeconds: 1.2,
      pitch: steppedTo([0.2, 2], [0.4, 0], [0.6, -2]),
    },
    {
      timeSeconds: 2.85,
      string: 3,
      fret: 5,
      velocity: 0.9,
      durationSeconds: 0.9,
      pitch: steppedTo([0.15, 2], [0.3, 4]),
    },
    {
      timeSeconds: 3.85,
      string: 5,
      fret: 3,
      velocity: 0.95,
      durationSeconds: 2.2,
      pitch: [...slidOver(4, 0.15, 0.35), ...slidOver(2, 1, 1.2, 4)],
    },
  ];
  return {
    name: "legato",
    description: "Slides, and notes hammered on and pulled off after one pluck",
    seconds: 6.5,
    notes,
  };
}
