import { describe, expect, test } from "vitest";
import { contradictionsIn } from "../../../src/choice/wanted/contradictions.ts";
import { parseWishes } from "../../../src/choice/wanted/parse-wishes.ts";
import { askFor } from "../../../src/choice/wanted/wish.ts";

const told = (text: string) => contradictionsIn(parseWishes(text).wishes).map(({ words, text: why }) => [words, why]);

describe("words that no sound can be at once", () => {
  test("glassy and dark: a tall peak and none, and a cutoff under its own peak", () => {
    const [[words, why] = []] = told("glassy and dark 4");
    expect(words).toEqual(["glassy", "dark"]);
    expect(why).toBe(
      "No sound in position 4 is both “glassy” and “dark”." +
        " “glassy” asks for a peak of 4 kHz to 7.5 kHz, “dark” for a cutoff of at most 3.5 kHz, and a cutoff never lies under its own peak." +
        " “glassy” asks for peak's height of at least 4 dB, “dark” for at most 2 dB. The search comes as near as it can to each.",
    );
  });

  test("loud and soft in one place, not in two", () => {
    expect(told("loud soft 2")).toHaveLength(1);
    expect(told("loud 2, soft 4")).toEqual([]);
  });

  test("what is wished for everywhere holds in a position too", () => {
    expect(told("balanced, loud 1")).toEqual([]);
    expect(told("soft everywhere, loud 1").map(([words]) => words)).toEqual([["loud", "soft"]]);
  });

  test("words that go together, and targets that touch, are no contradiction", () => {
    expect(told("glassy bright quacky hum-free 4, fat bridge that cleans up")).toEqual([]);
    const touching = [
      askFor("loud", [{ figure: "loudness", low: 2 }]),
      askFor("soft", [{ figure: "loudness", high: 2 }]),
    ];
    expect(contradictionsIn([{ where: { kind: "position", position: 1 }, asks: touching }])).toEqual([]);
  });
});
