import { LEAD_IN_SECONDS, type Phrase, stepped } from "../score.ts";

export function singlePluck(): Phrase {
  const notes = stepped(LEAD_IN_SECONDS, 1, [[0, 4, 0, 3.2, 0.9]]);
  return { name: "pluck", description: "One note, the open D string", seconds: 3.6, notes };
}

export function singleLine(): Phrase {
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

/** At an octave, a twelfth and two octaves: frets twelve, seven and five of the open string. */
export function harmonics(): Phrase {
  const rows: readonly [harmonic: number, strings: readonly number[]][] = [
    [2, [6, 5, 4, 3, 2, 1]],
    [3, [5, 4, 3, 2]],
    [4, [6, 4, 3, 1]],
  ];
  const touched = rows.flatMap(([harmonic, strings]) => strings.map((string) => ({ harmonic, string })));
  const steps = touched.map(({ string }, beat) => [beat, string, 0, beat < 13 ? 3 : 6, 0.95] as const);
  const notes = stepped(LEAD_IN_SECONDS, 0.36, steps).map((note, index) => ({
    ...note,
    harmonic: touched[index]!.harmonic,
    // Nearer to the bridge than usual, so that the octaves ring more.
    pluckMetres: 0.12,
  }));
  return {
    name: "harmonics",
    description:
      "Open strings touched at frets 12, 7 and 5; a coil at a quarter of the string hears nothing of the last",
    seconds: 7.2,
    notes,
  };
}

export function volumeSwell(): Phrase {
  const notes = stepped(LEAD_IN_SECONDS, 1, [
    [0, 4, 9, 1.7, 0.9],
    [0, 3, 9, 1.7, 0.9],
    [1.8, 3, 11, 1.6, 0.9],
    [1.8, 2, 12, 1.6, 0.9],
    [3.5, 4, 7, 2.9, 0.9],
    [3.5, 3, 7, 2.9, 0.9],
    [3.5, 2, 8, 2.9, 0.9],
    [3.5, 1, 7, 2.9, 0.9],
  ]).map((note) => ({ ...note, swellSeconds: 0.7 }));
  return {
    name: "swell",
    description: "Notes faded in without their pluck, as by the volume knob but without its change of tone",
    seconds: 6.8,
    notes,
  };
}
