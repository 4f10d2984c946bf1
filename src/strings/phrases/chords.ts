import { LEAD_IN_SECONDS, type Note, type Phrase, stepped, strummed } from "../score.ts";

/** Frets from string 1 down. */
const E_MAJOR = [0, 0, 1, 2, 2, 0];
const A_MAJOR = [0, 2, 2, 2, 0, null];

/** A7 and D9 without its root, on the four high strings. */
const A_SEVENTH = [5, 5, 6, 5, null, null];
const D_NINTH = [5, 5, 5, 4, null, null];

export function openStrum(): Phrase {
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

export function arpeggio(): Phrase {
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

/** A stroke on every sixteenth that is named: rung short, or on strings that the hand only rests on. */
function chop(
  timeSeconds: number,
  frets: readonly (number | null)[],
  sixteenth: number,
  sort: "x" | "o" | ".",
): Note[] {
  if (sort === ".") return [];
  const direction = sixteenth % 2 === 0 ? "down" : "up";
  const chord = { timeSeconds, frets, direction, spreadSeconds: 0.006 } as const;
  if (sort === "o") return strummed({ ...chord, velocity: sixteenth % 8 === 0 ? 0.95 : 0.8, ringSeconds: 0.11 });
  const ghosts = strummed({ ...chord, velocity: 0.35, ringSeconds: 0.05 });
  return ghosts.map((note) => ({ ...note, muted: true, durationSeconds: 0.02 }));
}

export function chordChops(): Phrase {
  const bars = [
    { frets: A_SEVENTH, strokes: "o.xo..xxo.xo.xo." },
    { frets: D_NINTH, strokes: "o.xo..xxoxo..x.." },
  ];
  const notes = bars.flatMap(({ frets, strokes }, bar) =>
    [...strokes].flatMap((sort, sixteenth) =>
      chop(LEAD_IN_SECONDS + (16 * bar + sixteenth) * 0.15, frets, sixteenth, sort as "x" | "o" | "."),
    ),
  );
  return { name: "chops", description: "Short chord strokes with dead ones between them", seconds: 5.2, notes };
}
