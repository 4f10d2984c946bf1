import type { DriveLaw } from "./law.ts";

/** Beyond it e^−2u is nothing beside u, and the integral of tanh a straight line. */
const LAST = 20;
const STEPS_A_UNIT = 128;
/** Of ln cosh u + ln 2 at the table's steps. */
const INTEGRAL = Float64Array.from({ length: LAST * STEPS_A_UNIT + 2 }, (_, k) => {
  const u = k / STEPS_A_UNIT;
  return u + Math.log1p(Math.exp(-2 * u));
});
/** And its slope a step. */
const SLOPE = Float64Array.from(INTEGRAL, (_, k) => Math.tanh(k / STEPS_A_UNIT) / STEPS_A_UNIT);

/** ∫tanh by Hermite's cubic between the table's steps, its slope within 1e-8 of tanh. */
function integralOfTanh(u: number): number {
  const size = Math.abs(u);
  if (!(size < LAST)) return size;
  const at = size * STEPS_A_UNIT;
  const k = Math.floor(at);
  const t = at - k;
  const left = INTEGRAL[k]!;
  const rise = INTEGRAL[k + 1]! - left;
  const slope = SLOPE[k]!;
  const bend = 3 * rise - 2 * slope - SLOPE[k + 1]!;
  const twist = slope + SLOPE[k + 1]! - 2 * rise;
  return left + t * (slope + t * (bend + t * twist));
}

/** Nearer to each other than this, two integrals' difference is rounding. */
const NEAR = 1e-6;

/**
 * The stage's curve, each output sample its mean over the straight line between two input samples: half a sample late, and with less
 * of what would fold back (Parker, Zavalishin & Le Bivic, Reducing the aliasing of nonlinear waveshaping, DAFx-16).
 */
export class SoftClip {
  readonly #law: DriveLaw;
  #u = 0;
  #integral = integralOfTanh(0);

  constructor(law: DriveLaw) {
    this.#law = law;
  }

  /** Writes over the first `count` of the samples, which follow those of the call before. */
  run(samples: Float64Array, count: number): void {
    const { perVolt, volts } = this.#law;
    let before = this.#u;
    let integralBefore = this.#integral;
    for (let n = 0; n < count; n++) {
      const u = perVolt * samples[n]!;
      const integral = integralOfTanh(u);
      const step = u - before;
      const isNear = step < NEAR && step > -NEAR;
      samples[n] = volts * (isNear ? Math.tanh(0.5 * (u + before)) : (integral - integralBefore) / step);
      before = u;
      integralBefore = integral;
    }
    this.#u = before;
    this.#integral = integralBefore;
  }
}
