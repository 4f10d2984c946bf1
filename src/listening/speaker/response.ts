import { amplitudeFromDecibels, powerDecibels } from "../../decibels.ts";
import { SPEAKER, type SpeakerFigures } from "./figures.ts";

/** Denominator or numerator a·s² + b·s + c, s = j·f/corner. */
type Quadratic = readonly [a: number, b: number, c: number];

interface Section {
  readonly hertz: number;
  readonly over: Quadratic;
  readonly under: Quadratic;
}

/** Pole pairs of a Butterworth low-pass, and a single pole where the order is odd (Butterworth, Wireless Engineer 7, 1930). */
function butterworth(hertz: number, order: number): Section[] {
  const pairs = Array.from({ length: Math.floor(order / 2) }, (_, k): Section => {
    const damping = 2 * Math.sin((Math.PI * (2 * k + 1)) / (2 * order));
    return { hertz, over: [0, 0, 1], under: [1, damping, 1] };
  });
  return order % 2 === 0 ? pairs : [...pairs, { hertz, over: [0, 0, 1], under: [0, 1, 1] }];
}

/** The bell's gain is A at its middle and √A where it is Q wide: (s² + s·√A/Q + 1)/(s² + s/(√A·Q) + 1). */
function sectionsOf({ highPass, presence, lowPass }: SpeakerFigures): Section[] {
  const half = Math.sqrt(amplitudeFromDecibels(presence.decibels));
  return [
    { hertz: highPass.hertz, over: [1, 0, 0], under: [1, 1 / highPass.q, 1] },
    { hertz: presence.hertz, over: [1, half / presence.q, 1], under: [1, 1 / (half * presence.q), 1] },
    ...butterworth(lowPass.hertz, lowPass.order),
  ];
}

const SECTIONS = sectionsOf(SPEAKER);

/** Complex gain of the stated speaker, 1 in the middle of its band, at each of the frequencies in Hz. */
export function speakerTransfer(frequenciesHz: Float64Array): { re: Float64Array; im: Float64Array } {
  const re = new Float64Array(frequenciesHz.length).fill(1);
  const im = new Float64Array(frequenciesHz.length);
  for (const { hertz, over, under } of SECTIONS) {
    for (let i = 0; i < re.length; i++) {
      const f = frequenciesHz[i]! / hertz;
      const overRe = over[2] - over[0] * f * f;
      const overIm = over[1] * f;
      const underRe = under[2] - under[0] * f * f;
      const underIm = under[1] * f;
      const size = underRe * underRe + underIm * underIm;
      const gainRe = (overRe * underRe + overIm * underIm) / size;
      const gainIm = (overIm * underRe - overRe * underIm) / size;
      const before = re[i]!;
      re[i] = before * gainRe - im[i]! * gainIm;
      im[i] = before * gainIm + im[i]! * gainRe;
    }
  }
  return { re, im };
}

/** The published curve: dB over the middle of the speaker's band. @param frequencyHz above 0 */
export function speakerDecibels(frequencyHz: number): number {
  const { re, im } = speakerTransfer(Float64Array.of(frequencyHz));
  return powerDecibels(re[0]! ** 2 + im[0]! ** 2);
}
