import { LEAD_IN_SECONDS, type Note, type Phrase, stepped } from "../score.ts";

export function mutedRiff(): Phrase {
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

export function bassLine(): Phrase {
  const notes = stepped(LEAD_IN_SECONDS, 0.4, [
    [0, 6, 0, 1.9, 0.9],
    [2, 6, 3, 0.9, 0.8],
    [3, 5, 0, 1.9, 0.85],
    [5, 5, 2, 0.9, 0.8],
    [6, 6, 3, 0.9, 0.8],
    [7, 6, 0, 1.9, 0.9],
    [9, 5, 0, 0.9, 0.8],
    [10, 4, 0, 0.9, 0.8],
    [11, 5, 2, 0.9, 0.8],
    [12, 6, 0, 4.5, 0.95],
  ]);
  return { name: "bass-line", description: "Open and low notes on the three low strings", seconds: 7, notes };
}
