import { expect, it } from "vitest";
import { worstTake } from "../../../src/examine/answer/worst-take.ts";

const LAID = { pickup: "neck", coil: "coil" };

function take(through: unknown, has: number, drawn: number, agrees = false) {
  return {
    title: "lever 1",
    through,
    agrees,
    frequencies: [100, 1000],
    magnitudes: [drawn, has],
    degrees: [0, 0],
    errors: [0.01, 0.01],
    expected: { magnitudes: [drawn, drawn], degrees: [0, 0] },
  };
}

it.each([
  [take(LAID, 0.2, 0.1), "The take with lever 1 is 2.0 times as strong at 1 kHz as the drawing has it."],
  [take(LAID, 0.2, 0), "The take with lever 1 is heard at 1 kHz, where the guard as drawn is silent."],
  [take(LAID, 0, 0.1), "The take with lever 1 is silent at 1 kHz, where the guard as drawn is heard."],
  [
    take("jack", 5e3, 1e4),
    "The take with lever 1 shows 5 kΩ at 1 kHz where the guard as drawn comes no nearer than 10 kΩ.",
  ],
])("says where a take lies furthest from the drawing, and never by how many times silence: %#", (odd, words) => {
  expect(worstTake([take(LAID, 0.1, 0.1, true), odd])).toBe(words);
});
