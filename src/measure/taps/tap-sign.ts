import type { Swing } from "./swings.ts";

/**
 * A tool comes, rests and leaves, and each coming swings the other way than each leaving. How long it rests and stays away, and how
 * often either is too faint to be found: a judgement, no source.
 */
type Part = "comes" | "leaves";

interface Step {
  readonly to: Part;
  readonly chance: number;
  readonly seconds: number;
  /** Of the natural logarithm of the seconds. */
  readonly spread: number;
}

const STEPS: Readonly<Record<Part, readonly Step[]>> = {
  comes: [
    { to: "leaves", chance: 0.84, seconds: 0.14, spread: 0.7 },
    // Its leaving was not found, or it stuttered.
    { to: "comes", chance: 0.1, seconds: 0.55, spread: 0.5 },
    { to: "comes", chance: 0.06, seconds: 0.06, spread: 0.4 },
  ],
  leaves: [
    { to: "comes", chance: 0.9, seconds: 0.4, spread: 0.6 },
    { to: "leaves", chance: 0.06, seconds: 0.6, spread: 0.5 },
    { to: "leaves", chance: 0.04, seconds: 0.06, spread: 0.4 },
  ],
};
const BEGINS: Readonly<Record<Part, number>> = { comes: 0.93, leaves: 0.07 };
/** A swing's first lobe is the one that it should be. */
const RIGHT = 0.95;
/** ln of the odds that a swing wholly before its top is a coming. */
const LEAN_ODDS = 1.2;

const density = (seconds: number, { seconds: usual, spread }: Step) =>
  Math.exp(-(Math.log(Math.max(seconds, 1e-3) / usual) ** 2) / (2 * spread * spread)) / spread;

function seen(swing: Swing, part: Part, sign: 1 | -1): number {
  const expected = part === "comes" ? sign : -sign;
  const leaning = 1 / (1 + Math.exp((part === "comes" ? 2 : -2) * LEAN_ODDS * swing.lean));
  return (swing.sign === expected ? RIGHT : 1 - RIGHT) * leaning;
}

/** How likely the swings are in their order, where a coming has this sign. */
function likelihood(swings: readonly Swing[], sign: 1 | -1): number {
  const [first, ...others] = swings;
  let at: Record<Part, number> = {
    comes: BEGINS.comes * seen(first!, "comes", sign),
    leaves: BEGINS.leaves * seen(first!, "leaves", sign),
  };
  let before = first!;
  for (const swing of others) {
    const next: Record<Part, number> = { comes: 0, leaves: 0 };
    for (const part of ["comes", "leaves"] as const) {
      for (const step of STEPS[part]) {
        next[step.to] += at[part] * step.chance * density(swing.at - before.at, step) * seen(swing, step.to, sign);
      }
    }
    at = next;
    before = swing;
  }
  return at.comes + at.leaves;
}

/** Which way a tool's coming swings, and how likely it is so, 0.5 to 1. */
export function tapSign(swings: readonly Swing[]): { readonly sign: 1 | -1; readonly certainty: number } {
  const [up, down] = [likelihood(swings, 1), likelihood(swings, -1)];
  const share = up + down > 0 ? up / (up + down) : 0.5;
  return share >= 0.5 ? { sign: 1, certainty: share } : { sign: -1, certainty: 1 - share };
}
