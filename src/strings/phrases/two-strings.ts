import { LEAD_IN_SECONDS, type Phrase, stepped } from "../score.ts";

export function doubleStops(): Phrase {
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
