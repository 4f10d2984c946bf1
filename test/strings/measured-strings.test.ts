import { describe, expect, test } from "vitest";
import { METRES_PER_INCH } from "../../src/lengths.ts";
import { decayLawOf, decayPerSecond } from "../../src/strings/decay.ts";
import { inharmonicity, soundingString, usualStringSet } from "../../src/strings/string-set.ts";
import { MEASURED_STRINGS } from "./measured-strings.ts";

const SCALE = 0.648;
/** ln of 60 dB. */
const SIXTY_DB = Math.log(1000);

describe("strings beside a guitar that was measured", () => {
  test.each(MEASURED_STRINGS)("$gaugeInches in: stiffness within 15 %", (string) => {
    const { openFrequencyHz, gaugeInches, wound } = string;
    const B = inharmonicity({ openFrequencyHz, gaugeMetres: gaugeInches * METRES_PER_INCH, wound }, SCALE);
    expect(Math.abs(B / string.inharmonicity - 1)).toBeLessThan(0.15);
  });

  test("ring as long, within a factor of 1.5, in nine tenths of strings and bands", () => {
    const ratios = MEASURED_STRINGS.flatMap((string) =>
      string.fallTimes.map(([hertz, seconds]) => SIXTY_DB / decayPerSecond(decayLawOf(string), hertz) / seconds),
    );
    const near = ratios.filter((ratio) => ratio > 1 / 1.5 && ratio < 1.5);
    expect(ratios).toHaveLength(54);
    expect(near.length / ratios.length).toBeGreaterThan(0.9);
  });

  test("plain ones ring on where wound ones are gone: at 2 kHz four times as long", () => {
    const at = (number: number) => decayPerSecond(soundingString(usualStringSet(SCALE), number, 0).decay, 2000);
    expect(at(6) / at(1)).toBeGreaterThan(4);
  });
});

describe("a string that was not measured", () => {
  const lawAt = (openFrequencyHz: number, wound: boolean) => decayLawOf({ openFrequencyHz, wound });

  test("rings between its neighbours in pitch, as the outermost beyond them", () => {
    expect(lawAt(40, true)).toEqual(lawAt(82.41, true));
    expect(lawAt(900, false)).toEqual(lawAt(329.63, false));
    const [low, middle, high] = [82.41, 95, 110].map((hertz) => lawAt(hertz, true).wire) as [number, number, number];
    expect(middle).toBeLessThan(low);
    expect(middle).toBeGreaterThan(high);
  });
});
