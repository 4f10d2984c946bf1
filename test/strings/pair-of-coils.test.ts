import { describe, expect, test } from "vitest";
import { type CoilPlace, REFERENCE_COIL } from "../../src/strings/comb.ts";
import { phraseNamed } from "../../src/strings/phrases.ts";
import { usualStringSet } from "../../src/strings/string-set.ts";
import { renderPhrase } from "../../src/strings/synth.ts";
import { rmsOf } from "./spectrum.ts";

const RATE = 44_100;
const SET = usualStringSet();
const PHRASE = phraseNamed("pluck");

function sum(signals: readonly Float32Array[]): Float32Array {
  return signals[0]!.map((value, i) => value + signals[1]![i]!);
}

describe("two equal coils", () => {
  test.each([
    { winding: 1, magnet: 1, string: "adds" },
    { winding: -1, magnet: -1, string: "adds" },
    { winding: 1, magnet: -1, string: "cancels" },
    { winding: -1, magnet: 1, string: "cancels" },
  ] as const)("with winding $winding and magnet $magnet: the string $string", ({ winding, magnet, string }) => {
    const coils: CoilPlace[] = [REFERENCE_COIL, { ...REFERENCE_COIL, sign: (winding * magnet) as 1 | -1 }];
    const signals = renderPhrase(PHRASE, coils, SET, RATE);
    const [alone, together] = [rmsOf(signals[0]!), rmsOf(sum(signals))];
    expect(alone).toBeGreaterThan(1e-3);
    if (string === "adds") expect(together / alone).toBeCloseTo(2, 6);
    else expect(together).toBe(0);
  });

  test("at different places and opposite signs leave what the places differ in", () => {
    const coils: CoilPlace[] = [REFERENCE_COIL, { ...REFERENCE_COIL, distanceMetres: 0.162, sign: -1 }];
    const left = rmsOf(sum(renderPhrase(PHRASE, coils, SET, RATE)));
    expect(left).toBeGreaterThan(1e-3);
  });
});
