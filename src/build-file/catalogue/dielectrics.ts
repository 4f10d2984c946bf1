/** What lies between a cap's foils, and what it does to the cap. */
export interface Dielectric {
  readonly name: DielectricName;
  readonly title: string;
  /** tan δ at 1 kHz and at 10 kHz. */
  readonly loss: readonly [at1kHz: number, at10kHz: number];
  /** Fractions under and over the marked value, as this sort is usually sold. */
  readonly tolerance: readonly [low: number, high: number];
  /** Least and most change of capacitance, fractions of that at 25 °C, over the whole range from … to in °C. */
  readonly temperature: {
    readonly change: readonly [low: number, high: number];
    readonly from: number;
    readonly to: number;
  };
  /** Change at the rated voltage, a fraction. A pickup's fraction of a volt is far from it. */
  readonly voltage: number;
  /** Fraction lost with every tenfold of hours. */
  readonly ageing: number;
}

/** Classes of ceramic by their codes in EIA-198. */
export const DIELECTRIC_NAMES = [
  "film-pet",
  "film-pp",
  "paper",
  "mica",
  "ceramic-c0g",
  "ceramic-x7r",
  "ceramic-z5u",
  "ceramic-y5v",
] as const;

export type DielectricName = (typeof DIELECTRIC_NAMES)[number];

const even = (fraction: number) => [-fraction, fraction] as const;

function dielectric(
  name: DielectricName,
  title: string,
  rest: Omit<Dielectric, "name" | "title" | "voltage" | "ageing"> & Partial<Dielectric>,
): Dielectric {
  return { name, title, voltage: 0, ageing: 0, ...rest };
}

/** Where each figure comes from is said value by value in `sources/`. */
export const DIELECTRICS: readonly Dielectric[] = [
  dielectric("film-pet", "polyester film", {
    loss: [0.008, 0.015],
    tolerance: even(0.1),
    temperature: { change: even(0.05), from: -55, to: 100 },
  }),
  dielectric("film-pp", "polypropylene film", {
    loss: [0.0005, 0.0008],
    tolerance: even(0.05),
    temperature: { change: even(0.025), from: -55, to: 100 },
  }),
  dielectric("paper", "paper in oil", {
    loss: [0.005, 0.01],
    tolerance: even(0.2),
    temperature: { change: even(0.05), from: -40, to: 85 },
  }),
  dielectric("mica", "mica", {
    loss: [0.001, 0.001],
    tolerance: even(0.05),
    temperature: { change: even(0.01), from: -55, to: 125 },
  }),
  dielectric("ceramic-c0g", "C0G ceramic", {
    loss: [0.001, 0.001],
    tolerance: even(0.05),
    temperature: { change: even(0.003), from: -55, to: 125 },
  }),
  dielectric("ceramic-x7r", "X7R ceramic", {
    loss: [0.025, 0.025],
    tolerance: even(0.1),
    temperature: { change: even(0.15), from: -55, to: 125 },
    voltage: -0.2,
    ageing: 0.02,
  }),
  dielectric("ceramic-z5u", "Z5U ceramic", {
    loss: [0.03, 0.03],
    tolerance: even(0.2),
    temperature: { change: [-0.56, 0.22], from: 10, to: 85 },
    voltage: -0.5,
    ageing: 0.05,
  }),
  dielectric("ceramic-y5v", "Y5V ceramic", {
    loss: [0.03, 0.03],
    tolerance: [-0.2, 0.8],
    temperature: { change: [-0.82, 0.22], from: -30, to: 85 },
    voltage: -0.7,
    ageing: 0.08,
  }),
];

export function dielectricOf(name: DielectricName): Dielectric {
  return DIELECTRICS.find((each) => each.name === name)!;
}
