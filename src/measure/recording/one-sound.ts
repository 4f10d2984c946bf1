import { faultAt } from "../../errors.ts";

/** −40 dB: an input with nothing in it, or what leaks into it. */
const LEAKS = 0.01;
/** Of one sound in both channels, hiss and all; a pickup and the signal that drives it stay under it. */
const ALIKE = 0.98;

/**
 * @param remedy what to say or send instead
 * @throws DATA_INSUFFICIENT where two channels hold two different sounds, and nobody said which is which
 */
export function requireOneSound(channels: readonly Float32Array[], path: string, remedy: string): void {
  const [a, b] = channels;
  if (!a || !b) return;
  let [product, first, second] = [0, 0, 0];
  for (let n = 0; n < a.length; n += 1) {
    product += a[n]! * b[n]!;
    first += a[n]! ** 2;
    second += b[n]! ** 2;
  }
  const [least, most] = [Math.min(first, second), Math.max(first, second)];
  if (least <= LEAKS ** 2 * most || Math.abs(product) > ALIKE * Math.sqrt(first * second)) return;
  throw faultAt("DATA_INSUFFICIENT", path, `has two channels with different sound in them; ${remedy}`);
}
