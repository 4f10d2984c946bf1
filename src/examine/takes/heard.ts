import type { Take } from "./take.ts";

/** A take that is not so many times its own errors, root mean square, has nothing in it. */
const ABOVE_NOISE = 3;

export function isHeard({ re, im, sd }: Take): boolean {
  let [size, noise] = [0, 0];
  for (let i = 0; i < re.length; i++) {
    size += re[i]! ** 2 + im[i]! ** 2;
    noise += 2 * sd[i]! ** 2;
  }
  return size > ABOVE_NOISE ** 2 * noise;
}
