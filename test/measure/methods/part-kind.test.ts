import { describe, expect, it } from "vitest";
import { impedanceBehind } from "../../../src/measure/methods/behind-resistor.ts";
import { requireOpenAbove } from "../../../src/measure/methods/open-run.ts";
import { type MeasuredPart, requirePart } from "../../../src/measure/methods/part-kind.ts";
import { createNormal } from "../../choice/fit/known-coils.ts";
import { capacitorPart, coilPart, JIG_HZ, jigRatios, nothing, type Part, resistorPart } from "../simulated-jig.ts";

const normal = createNormal(7);

interface Case {
  readonly is: MeasuredPart;
  readonly words: string;
  readonly part: Part;
  /** The jig's resistor. */
  readonly ohms: number;
}

const CASES: readonly Case[] = [
  { is: "coil", words: "a pickup behind 470 kΩ", part: coilPart, ohms: 470e3 },
  { is: "coil", words: "a pickup behind 10 kΩ", part: coilPart, ohms: 10e3 },
  { is: "resistor", words: "a pot of 500 kΩ", part: resistorPart(500e3), ohms: 470e3 },
  { is: "resistor", words: "a resistor of 1 kΩ", part: resistorPart(1e3), ohms: 10e3 },
  { is: "capacitor", words: "a capacitor of 22 nF", part: capacitorPart(22e-9), ohms: 10e3 },
  { is: "capacitor", words: "a lossy capacitor of 100 nF", part: capacitorPart(100e-9, 0.1), ohms: 4700 },
  { is: "lead", words: "a lead of 500 pF", part: capacitorPart(500e-12, 0.02), ohms: 470e3 },
];
const PARTS: readonly MeasuredPart[] = ["coil", "resistor", "capacitor", "lead"];
/** A lead is a small capacitor, and its value is right by either name. */
const isNamed = ({ is, words }: Case, said: MeasuredPart) =>
  is === said || (is === "lead" && said === "capacitor") || (words.includes("pF") && said === "capacitor");

describe("a part behind a resistor", () => {
  for (const rig of ["with", "without"] as const) {
    for (const each of CASES) {
      const measured = jigRatios(each.ohms, each.part, normal);
      const open = rig === "with" ? jigRatios(each.ohms, nothing, normal) : undefined;
      // An input's megohm across so small a capacitance is taken for a resistor by whoever says so.
      const isMixed = each.is === "lead" && rig === "without";
      const points = impedanceBehind(measured, JIG_HZ, each.ohms, { open });
      it(`is refused by any name but its own: ${each.words}, ${rig} the input measured`, () => {
        for (const said of PARTS) {
          if (isNamed(each, said) || (isMixed && said === "resistor"))
            expect(() => requirePart(said, points)).not.toThrow();
          else
            expect(() => requirePart(said, points), said).toThrow(
              new RegExp(`^part: what was measured .*looks like .*Say part: .*${each.is}`),
            );
        }
      });
    }
  }

  it.each(CASES.map((each) => [each.words, each] as const))("and nothing, exchanged: %s", (_, { part, ohms }) => {
    const [measured, open] = [jigRatios(ohms, part, normal), jigRatios(ohms, nothing, normal)];
    requireOpenAbove(measured, open, JIG_HZ);
    expect(() => requireOpenAbove(open, measured, JIG_HZ)).toThrow(/^measured: .*the two recordings are exchanged/);
  });
});
