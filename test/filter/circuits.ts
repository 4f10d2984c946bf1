import type { TransferFunction } from "../../src/filter/impulse-response.ts";

interface Complex {
  readonly re: number;
  readonly im: number;
}

export function times(a: Complex, b: Complex): Complex {
  return { re: a.re * b.re - a.im * b.im, im: a.re * b.im + a.im * b.re };
}

export function over(a: Complex, b: Complex): Complex {
  const size = b.re * b.re + b.im * b.im;
  return { re: (a.re * b.re + a.im * b.im) / size, im: (a.im * b.re - a.re * b.im) / size };
}

/** Ratio of polynomials in s, coefficients in descending powers as SciPy's `freqs` takes them. */
export function rational(numerator: readonly number[], denominator: readonly number[]): TransferFunction {
  return transferOf((omega) => over(polynomial(numerator, omega), polynomial(denominator, omega)));
}

function polynomial(coefficients: readonly number[], omega: number): Complex {
  return coefficients.reduce<Complex>(
    (sum, c) => {
      const shifted = times(sum, { re: 0, im: omega });
      return { re: shifted.re + c, im: shifted.im };
    },
    { re: 0, im: 0 },
  );
}

export function transferOf(gain: (omega: number) => Complex): TransferFunction {
  return (frequenciesHz) => {
    const gains = Array.from(frequenciesHz, (f) => gain(2 * Math.PI * f));
    return { re: Float64Array.from(gains, (g) => g.re), im: Float64Array.from(gains, (g) => g.im) };
  };
}

export function gainAt(transfer: TransferFunction, frequencyHz: number): Complex {
  const { re, im } = transfer(Float64Array.of(frequencyHz));
  return { re: re[0]!, im: im[0]! };
}

/** Second-order low-pass: gain Q at its resonance, the bare form of a coil with its capacitance. */
export function resonance(frequencyHz: number, q: number, gain = 1): TransferFunction {
  const w = 2 * Math.PI * frequencyHz;
  return rational([gain], [1 / (w * w), 1 / (q * w), 1]);
}

/** A coil into cable, volume pot, amplifier and a tone pot with 22 nF: closed form of the one-node ladder. */
export function coilWithTone(toneOhms: number, inductanceHenries = 2.5, gain = 1, capFarads = 22e-9): TransferFunction {
  return transferOf((omega) => {
    const series = { re: 6000, im: omega * inductanceHenries };
    const toneBranch = { re: toneOhms, im: -1 / (omega * capFarads) };
    const shunt = over({ re: 1, im: 0 }, toneBranch);
    const load = times(series, { re: 1 / 250e3 + 1 / 1e6 + shunt.re, im: omega * 610e-12 + shunt.im });
    return over({ re: gain, im: 0 }, { re: 1 + load.re, im: load.im });
  });
}

export function sumOf(...transfers: readonly TransferFunction[]): TransferFunction {
  return (frequenciesHz) => {
    const parts = transfers.map((transfer) => transfer(frequenciesHz));
    const total = (key: "re" | "im") =>
      Float64Array.from(frequenciesHz, (_, k) => parts.reduce((sum, part) => sum + part[key][k]!, 0));
    return { re: total("re"), im: total("im") };
  };
}

/** Frequency response of taps, the delay taken out, by the plain sum. */
export function responseOf(
  taps: Float64Array,
  delaySamples: number,
  sampleRateHz: number,
  frequencyHz: number,
): Complex {
  const step = (2 * Math.PI * frequencyHz) / sampleRateHz;
  let re = 0;
  let im = 0;
  for (let n = 0; n < taps.length; n++) {
    const angle = step * (n - delaySamples);
    re += taps[n]! * Math.cos(angle);
    im -= taps[n]! * Math.sin(angle);
  }
  return { re, im };
}

export function logSpaced(fromHz: number, toHz: number, count: number): number[] {
  return Array.from({ length: count }, (_, k) => fromHz * (toHz / fromHz) ** (k / (count - 1)));
}

/** Largest |20·log10(a/b)| including the phase: the size of a/b − 1 as decibels, so a wrong phase counts as well. */
export function errorDb(measured: Complex, wanted: Complex): number {
  const ratio = over(measured, wanted);
  return 20 * Math.log10(1 + Math.hypot(ratio.re - 1, ratio.im));
}
