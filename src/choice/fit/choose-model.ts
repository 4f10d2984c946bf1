import type { LossModel } from "./coil-shapes.ts";
import type { Attempt } from "./fit-attempt.ts";

/**
 * Akaike's criterion, corrected for small samples, by every stretch's own scatter; the least is best.
 * @param shares of each stretch that count as independent; left out: all
 */
export function aiccOf({ parts, unusual, unknowns }: Attempt, shares?: readonly number[]): number {
  let [fitted, count] = [0, 0];
  for (const [i, { sigma, unlikeliness }] of parts.entries()) {
    const share = shares?.[i] ?? 1;
    fitted += share * unlikeliness;
    count += share * sigma.length;
  }
  const k = unknowns + 1;
  return fitted + unusual + 2 * k + (2 * k * (k + 1)) / Math.max(1, count - k - 1);
}

/** A difference in AICc beyond which the worse model has hardly any support (Burnham and Anderson 2002, from memory). */
export const DECISIVE_AICC = 10;

const PLAIN: ReadonlySet<LossModel> = new Set(["none", "resistor"]);

const least = (attempts: readonly Attempt[], of: (made: Attempt) => number) =>
  attempts.reduce<Attempt | undefined>((best, made) => (best && of(best) <= of(made) ? best : made), undefined);

/**
 * The one with the least AICc; but that a coil has steel in it is not said by a difference that errors that go together could make.
 */
export function chosenOf(usable: readonly Attempt[]): Attempt {
  const best = least(usable, (made) => aiccOf(made))!;
  if (PLAIN.has(best.shape.loss)) return best;
  const shares = best.parts.map(({ share }) => share);
  const byCounting = (made: Attempt) => aiccOf(made, shares);
  const plain = least(
    usable.filter(({ shape }) => PLAIN.has(shape.loss)),
    byCounting,
  );
  return plain && byCounting(plain) < byCounting(best) + DECISIVE_AICC ? plain : best;
}
