import type { Coil } from "../build-file/schema.ts";
import type { Spectrum } from "../network/nodal-analysis.ts";

/** What metal leaves of a coil's EMF, as a complex factor over frequency. */
type EmfLaw = (frequenciesHz: Float64Array) => Spectrum;

type Shielding = NonNullable<Coil["shielding"]>;

/** The zero and the pole of a first-order law, in Hz; a zero at infinity is none. */
function cornersOf(shielding: Shielding): { readonly zeroHz: number; readonly poleHz: number } {
  if ("pole" in shielding) return { zeroHz: Number.POSITIVE_INFINITY, poleHz: shielding.pole };
  const apart = 10 ** (shielding.depth / 40);
  return { zeroHz: shielding.shelf * apart, poleHz: shielding.shelf / apart };
}

/** (1 + jf/zero) / (1 + jf/pole): 1 far below both, and where there is a zero, pole/zero far above. */
export function emfLaw(shielding: Shielding): EmfLaw {
  const { zeroHz, poleHz } = cornersOf(shielding);
  return (frequenciesHz) => {
    const re = new Float64Array(frequenciesHz.length);
    const im = new Float64Array(frequenciesHz.length);
    for (const [i, frequencyHz] of frequenciesHz.entries()) {
      const [z, p] = [frequencyHz / zeroHz, frequencyHz / poleHz];
      re[i] = (1 + z * p) / (1 + p * p);
      im[i] = (z - p) / (1 + p * p);
    }
    return { re, im };
  };
}

export function times(a: Spectrum, b: Spectrum): Spectrum {
  return {
    re: a.re.map((value, i) => value * b.re[i]! - a.im[i]! * b.im[i]!),
    im: a.re.map((value, i) => value * b.im[i]! + a.im[i]! * b.re[i]!),
  };
}
