import type { ExaminedAnswer } from "../../src/contract/examine/examine-answer.ts";

const FREQUENCIES = Array.from({ length: 24 }, (_, i) => 100 * 1.22 ** i);
const flat = (level: number) => FREQUENCIES.map(() => level);

const take = (file: string, title: string, toggle: number, agrees: boolean): ExaminedAnswer["takes"][number] => ({
  file,
  title,
  settings: { toggle },
  through: "jack",
  frequencies: FREQUENCIES,
  magnitudes: flat(10_000),
  degrees: flat(0),
  errors: flat(0.01),
  expected: { magnitudes: flat(20_000), degrees: flat(0) },
  curves: { unit: "dB re 1 kΩ", measured: flat(20), drawn: flat(agrees ? 20 : 26), best: agrees ? null : flat(20) },
  agrees,
});

/** What the service may say of a guard of two volumes and two tones whose cap is another: every kind of thing that an answer holds. */
export const EXAMINED: ExaminedAnswer = {
  kind: "examined",
  verdict: "departs",
  title: "Tone cap: about 47 nF instead of 22 nF",
  summary: "The takes are those of a larger cap at tone1.2.",
  next: "Toggle in position 3 would tell the leading answers apart.",
  departures: [
    {
      faults: [],
      message: "The cap from tone1.2 to ground is larger than drawn.",
      title: "Tone cap: about 47 nF instead of 22 nF",
      next: "Read what is printed on it.",
      prior: 0.02,
      probability: 0.9,
      fit: 0.6,
      sameAs: [],
      alike: "",
      sorts: [{ title: "Open connections", count: 12, examples: ["Wire from tone1.1 is open."], shownBy: null }],
    },
  ],
  remainder: { probability: 0.05, message: "Left for what was not weighed." },
  notShown: [],
  notShownSorts: [],
  takes: [take("take1", "toggle in position 1", 1, false), take("take2", "toggle in position 2", 2, true)],
  recordings: [],
  parts: [],
  together: [],
  considered: 100,
  nextTake: {
    settings: { toggle: 3, volume1: 5 },
    through: "jack",
    title: "toggle in position 3, neck volume at 5",
    instruction: "Play the sweep through the resistor into the jack.",
    why: "it tells the two apart",
  },
  nextMeasurement: {
    kind: "meter",
    instruction: "Measure from tone1.2 to jack.tip.",
    between: ["jack.tip", "jack.sleeve"],
    settings: { toggle: 1 },
    outcomes: [],
  } as unknown as NonNullable<ExaminedAnswer["nextMeasurement"]>,
  floor: { fraction: 0.01, source: "Common practice, no source." },
  priors: "Common practice, no source.",
  notes: [],
  cautions: [],
  readings: [
    {
      title: "jack, toggle in position 1",
      between: ["jack.tip", "jack.sleeve"],
      shown: 7800,
      foretold: 3900,
      agrees: false,
      against: ["toggle in position 1"],
      settings: { toggle: 1 },
      message: "The meter shows twice what the takes make it read.",
    },
  ],
  contradictions: ["The reading at the jack contradicts the take toggle in position 1."],
};
