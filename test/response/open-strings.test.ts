import { expect, test } from "vitest";
import { openStringEnergies } from "../../src/response/open-strings.ts";
import type { Transfers } from "../../src/response/transfers.ts";
import type { CoilPlace } from "../../src/strings/comb.ts";
import { usualStringSet } from "../../src/strings/string-set.ts";
import { renderPhrase } from "../../src/strings/synth.ts";

const COILS: readonly CoilPlace[] = [
  { distanceMetres: 0.162, apertureMetres: 0.012, sign: 1, output: 1 },
  { distanceMetres: 0.042, apertureMetres: 0.012, sign: -1, output: 1.3 },
];
const WINDOW = { fromSeconds: 0.05, toSeconds: 1.05 };

/** Coils that reach the jack as they are. */
const STRAIGHT = {
  sources: [],
  perSource: ({ length }: Float64Array) =>
    COILS.map(() => ({ re: new Float64Array(length).fill(1), im: new Float64Array(length) })),
} as unknown as Transfers;

/** Mean square of a string's rendered pluck, the coils weighed. */
function renderedPower(string: number, weights: readonly number[]): number {
  const rate = 44_100;
  const notes = [{ timeSeconds: 0, string, fret: 0, velocity: 1, durationSeconds: 5 }];
  const coils = renderPhrase({ name: "one", description: "", seconds: 1.1, notes }, COILS, usualStringSet(), rate);
  let power = 0;
  const [from, to] = [Math.round(WINDOW.fromSeconds * rate), Math.round(WINDOW.toSeconds * rate)];
  for (let n = from; n < to; n++) power += coils.reduce((sum, coil, i) => sum + weights[i]! * coil[n]!, 0) ** 2;
  return power / (to - from);
}

test("levels of open strings are those of the strings as they are rendered, for one coil and for both, to 0.1 dB", () => {
  const energies = openStringEnergies({
    transfers: STRAIGHT,
    places: COILS,
    strings: usualStringSet(),
    groupOf: [0, 1],
    groupCount: 2,
    window: WINDOW,
    weight: () => 1,
  });
  const decibels = (power: number) => 10 * Math.log10(power);
  const offsets = [1, 3, 6].flatMap((string) =>
    [
      [1, 0],
      [0, 1],
      [1, 1],
      [0.5, -1],
    ].map((weights) => {
      const [a, b] = weights as [number, number];
      const [aa, ab, , bb] = energies[string - 1]!;
      return decibels(a * a * aa! + 2 * a * b * ab! + b * b * bb!) - decibels(renderedPower(string, weights));
    }),
  );
  // One constant stands between volts and the pluck's own unit; the partials' beats over a second leave hundredths.
  for (const offset of offsets) expect(Math.abs(offset - offsets[0]!)).toBeLessThan(0.1);
});
