import { showQuantity } from "../../build-file/show-quantity.ts";
import { type Ratios, seriesResistor } from "../impedance/series-resistor.ts";
import { sizeOf } from "../impedance/uncertain.ts";

/** What a recording without the part tells of the input behind the resistor, with its lead; undefined where it tells nothing of it. */
export interface InputFound {
  /** Ohms. */
  readonly resistance?: number;
  /** Farads. */
  readonly capacitance?: number;
}

const RESISTIVE_TO_HZ = 200;
const CAPACITIVE_HZ = [1000, 8000] as const;
const MOST_RELATIVE_ERROR = 0.3;

function middle(values: readonly number[]): number | undefined {
  return values.length > 0 ? values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] : undefined;
}

/** By its admittance: G well below where a lead's capacitance counts, B/ω well above. */
export function inputFound(
  open: Ratios,
  gain: Ratios | undefined,
  resistorOhms: number,
  frequenciesHz: Float64Array,
): InputFound {
  const told = seriesResistor(open, resistorOhms, { gain }).map((z, i) => {
    const square = z.re ** 2 + z.im ** 2;
    const hz = frequenciesHz[i]!;
    const farads = -z.im / square / (2 * Math.PI * hz);
    return { hz, siemens: z.re / square, farads, isTold: z.sd < MOST_RELATIVE_ERROR * sizeOf(z) };
  });
  const within = (from: number, to: number) => told.filter(({ hz, isTold }) => isTold && hz >= from && hz <= to);
  const siemens = middle(within(0, RESISTIVE_TO_HZ).map((each) => each.siemens));
  const farads = middle(within(...CAPACITIVE_HZ).map((each) => each.farads));
  return {
    ...(siemens !== undefined && siemens > 0 ? { resistance: 1 / siemens } : {}),
    ...(farads !== undefined && farads > 0 ? { capacitance: farads } : {}),
  };
}

/** What an input of a mixer to that of an instrument, with its lead, may have; a judgement, no source. */
const USUAL = { ohms: [5e3, 2e7], farads: [15e-12, 5e-9] } as const;

const isOutside = (value: number | undefined, [low, high]: readonly [number, number]) =>
  value !== undefined && (value < low || value > high);

/** Whether a recording without the part shows what no input is: it was made with another resistor, or with something clipped on. */
export function inputNotes({ resistance, capacitance }: InputFound): string[] {
  if (!isOutside(resistance, USUAL.ohms) && !isOutside(capacitance, USUAL.farads)) return [];
  const shown = [
    resistance === undefined ? [] : showQuantity(resistance, "resistance", 2),
    capacitance === undefined ? [] : showQuantity(capacitance, "capacitance", 2),
  ].flat();
  return [
    `By the recording without the part (\`open\`) the input has ${shown.join(" and ")}, which is hardly an input with a lead: look whether it was made with the same` +
      " resistor as with the part, and nothing clipped on. If not, the values told are off.",
  ];
}
