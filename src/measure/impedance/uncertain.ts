import type { Spectrum } from "../../network/nodal-analysis.ts";
import type { Transfer } from "../recording/passes.ts";

/** A complex number with the standard error of its real and of its imaginary part. */
export interface Uncertain {
  readonly re: number;
  readonly im: number;
  readonly sd: number;
}

export const pointsOf = ({ re, im, sd }: Spectrum & Pick<Transfer, "sd">): Uncertain[] =>
  Array.from(re, (each, i) => ({ re: each, im: im[i]!, sd: sd[i]! }));

export const sizeOf = ({ re, im }: Pick<Uncertain, "re" | "im">): number => Math.hypot(re, im);

/** a / b; the relative errors of both add by their squares. */
export function ratio(a: Uncertain, b: Uncertain): Uncertain {
  const norm = b.re * b.re + b.im * b.im;
  const re = (a.re * b.re + a.im * b.im) / norm;
  const im = (a.im * b.re - a.re * b.im) / norm;
  return { re, im, sd: Math.hypot(a.sd, Math.hypot(re, im) * b.sd) / Math.sqrt(norm) };
}

export const minus = (a: Uncertain, b: Uncertain): Uncertain => ({
  re: a.re - b.re,
  im: a.im - b.im,
  sd: Math.hypot(a.sd, b.sd),
});

export const times = (a: Uncertain, factor: number): Uncertain => ({
  re: factor * a.re,
  im: factor * a.im,
  sd: Math.abs(factor) * a.sd,
});

export const ONE: Uncertain = { re: 1, im: 0, sd: 0 };

/** t / (1 − t), whose derivative is 1 / (1 − t)². */
export function shareToRatio(t: Uncertain): Uncertain {
  const rest = minus(ONE, t);
  const { re, im } = ratio({ ...t, sd: 0 }, { ...rest, sd: 0 });
  return { re, im, sd: t.sd / (rest.re ** 2 + rest.im ** 2) };
}
