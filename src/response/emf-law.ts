import type { Coil } from "../build-file/schema.ts";
import type { Spectrum, ValueAndSlope } from "../network/nodal-analysis.ts";

/** What metal leaves of a coil's EMF, as a complex factor over frequency. */
type EmfLaw = (frequenciesHz: Float64Array) => Spectrum;

type Shielding = NonNullable<Coil["shielding"]>;
type Metal = Extract<Shielding, readonly unknown[]>[number];

/** (1 + jf/zero) / (1 + jf/pole), both in Hz: 1 far below them; a zero at infinity is none. */
export interface MetalFactor {
  readonly zeroHz: number;
  readonly poleHz: number;
}

function factorOf(metal: Metal): MetalFactor {
  if ("pole" in metal) return { zeroHz: Number.POSITIVE_INFINITY, poleHz: metal.pole };
  const apart = 10 ** (metal.depth / 40);
  return { zeroHz: metal.shelf * apart, poleHz: metal.shelf / apart };
}

/** The factors of a coil's EMF, one a metal; their product is what is left of it. */
export function metalFactors(shielding: Coil["shielding"]): MetalFactor[] {
  if (shielding === undefined) return [];
  return (Array.isArray(shielding) ? shielding : [shielding]).map(factorOf);
}

export function emfLaw(shielding: Shielding): EmfLaw {
  const factors = metalFactors(shielding);
  return (frequenciesHz) => {
    const re = new Float64Array(frequenciesHz.length);
    const im = new Float64Array(frequenciesHz.length);
    for (const [i, frequencyHz] of frequenciesHz.entries()) {
      let [a, b] = [1, 0];
      for (const { zeroHz, poleHz } of factors) {
        const [z, p] = [frequencyHz / zeroHz, frequencyHz / poleHz];
        const norm = 1 + p * p;
        const [c, d] = [(1 + z * p) / norm, (z - p) / norm];
        [a, b] = [a * c - b * d, a * d + b * c];
      }
      re[i] = a;
      im[i] = b;
    }
    return { re, im };
  };
}

/** A value and its slope over ln f behind metal: with q = f/corner, d ln(1 + jq)/d ln f = jq/(1 + jq) = (q² + jq)/(1 + q²). */
export function slopeBehind(value: ValueAndSlope, shielding: Shielding, frequencyHz: number): ValueAndSlope {
  let [logRe, logIm] = [0, 0];
  for (const { zeroHz, poleHz } of metalFactors(shielding))
    for (const [corner, sign] of [[zeroHz, 1] as const, [poleHz, -1] as const]) {
      const q = frequencyHz / corner;
      logRe += (sign * q * q) / (1 + q * q);
      logIm += (sign * q) / (1 + q * q);
    }
  const law = emfLaw(shielding)(Float64Array.of(frequencyHz));
  const [a, b] = [law.re[0]!, law.im[0]!];
  const { re, im } = value;
  const slopeRe = value.slopeRe + re * logRe - im * logIm;
  const slopeIm = value.slopeIm + re * logIm + im * logRe;
  return {
    re: re * a - im * b,
    im: re * b + im * a,
    slopeRe: slopeRe * a - slopeIm * b,
    slopeIm: slopeRe * b + slopeIm * a,
  };
}

export function times(a: Spectrum, b: Spectrum): Spectrum {
  return {
    re: a.re.map((value, i) => value * b.re[i]! - a.im[i]! * b.im[i]!),
    im: a.re.map((value, i) => value * b.im[i]! + a.im[i]! * b.re[i]!),
  };
}
