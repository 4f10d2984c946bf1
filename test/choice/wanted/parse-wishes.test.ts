import { describe, expect, test } from "vitest";
import { parseWishes } from "../../../src/choice/wanted/parse-wishes.ts";
import { tradeWord, WAYS_TO_SAY, WORD_NAMES } from "../../../src/choice/wanted/vocabulary/words.ts";
import { whereWords } from "../../../src/choice/wanted/wish.ts";

const understood = (text: string) =>
  parseWishes(text).wishes.map(({ where, asks }) => [whereWords(where), asks.map(({ word }) => word)]);

describe("wishes in plain words", () => {
  test("phrases by comma, a position by its number, a pickup by its name", () => {
    expect(understood("glassy 4, fat bridge that cleans up, hum-free 2")).toEqual([
      ["position 4", ["glassy"]],
      ["the bridge", ["fat", "cleans up"]],
      ["position 2", ["hum-free"]],
    ]);
    expect(parseWishes("glassy 4, fat bridge that cleans up, hum-free 2")).toMatchObject({ unknown: [], notes: [] });
  });

  test("every word of a phrase is wished for in every place of it, and places that come again are one", () => {
    expect(understood("warm and hum-free in positions 2 and 4; 4 loud")).toEqual([
      ["position 2", ["warm", "hum-free"]],
      ["position 4", ["warm", "hum-free", "loud"]],
    ]);
  });

  test("two pickups with a plus are one place; with an and they are two", () => {
    expect(understood("quacky bridge + middle")).toEqual([["the bridge + middle", ["quacky"]]]);
    expect(understood("bright bridge and neck")).toEqual([
      ["the bridge", ["bright"]],
      ["the neck", ["bright"]],
    ]);
  });

  test.each(["hum-free 2/4", "hum-free 2+4", "no hum in 2 & 4", "noiseless 2 + 4"])(
    "%s names two positions",
    (text) => {
      expect(understood(text)).toEqual([
        ["position 2", ["hum-free"]],
        ["position 4", ["hum-free"]],
      ]);
      expect(parseWishes(text).unknown).toEqual([]);
    },
  );

  test("of no place a word means one or another; balanced means all", () => {
    expect(understood("nasal, balanced")).toEqual([
      ["some position", ["nasal"]],
      ["every position", ["balanced"]],
    ]);
    expect(understood("hum free everywhere")).toEqual([["every position", ["hum-free"]]]);
  });

  test.each([
    ["Chimey position 4!", "position 4", "glassy"],
    ["no hum in 2", "position 2", "hum-free"],
    ["p2 noiseless", "position 2", "hum-free"],
    ["a neck that keeps its treble when turned down", "the neck", "keeps its treble"],
    ["not muddy neck", "the neck", "not muddy"],
    ["a neck that is not too muddy", "the neck", "not muddy"],
    ["bridge, never shrill", "some position", "not harsh"],
    ["twangy bridge", "the bridge", "biting"],
    ["4 spanky please", "position 4", "biting"],
    ["creamy neck", "the neck", "smooth"],
    ["bridge as loud as possible", "the bridge", "loud"],
    ["usable tone knob in the bridge", "the bridge", "tone knob usable"],
  ])("%s is read as it is meant", (text, where, word) => {
    expect(understood(text)).toEqual([[where, [word]]]);
    expect(parseWishes(text).unknown).toEqual([]);
  });

  test("words that nobody knows are told with the nearest that is known", () => {
    expect(parseWishes("glasy 4, brigde fat, xylophonic neck").unknown).toEqual([
      { said: "glasy", nearest: "glassy" },
      { said: "brigde", nearest: "bridge" },
      { said: "xylophonic", nearest: null },
    ]);
  });

  test("a word that is denied is not wished for, and how much of it is told to be unheeded", () => {
    const { wishes, notes } = parseWishes("not dark 4, very bright 2, neck");
    expect(wishes).toMatchObject([{ where: { position: 2 }, asks: [{ word: "bright" }] }]);
    expect(notes).toEqual([
      "“not dark”: say what it should be instead.",
      "“very” is not heeded: change the target's numbers instead.",
      "Nothing is wished for in “neck”.",
    ]);
  });

  test("a position that no guard has is told with those that there are, and nothing is wished for in its place", () => {
    for (const said of ["99", "-1", "0", "4.5", "6"]) {
      const { wishes, noPlaces, notes } = parseWishes(`glassy ${said}`);
      expect(wishes).toEqual([]);
      expect(noPlaces).toEqual([said]);
      expect(notes).toEqual([`“${said}” is no position; expected a position from 1 to 5, 1 nearest the bridge.`]);
    }
    expect(understood("glassy position 7, fat 1")).toEqual([["position 1", ["fat"]]]);
  });

  test("several positions from one to another are all of them", () => {
    const places = (text: string) => understood(text).map(([where]) => where);
    expect(places("hum-free 2-4")).toEqual(["position 2", "position 3", "position 4"]);
    expect(places("bright in positions 1 to 3")).toEqual(["position 1", "position 2", "position 3"]);
  });

  test.each([
    ["not too dark 4", "not too dark"],
    ["4 without a loud", "without a loud"],
    ["4 isn't thin", "isn't thin"],
    ["not wobbly 4", "not wobbly"],
  ])("%s wishes for nothing, and asks what it should be instead", (text, said) => {
    expect(parseWishes(text)).toMatchObject({ wishes: [], unknown: [{ said }] });
    expect(parseWishes(text).notes).toEqual([`“${said}”: say what it should be instead.`]);
  });

  test.each(["", " , ; \n", "🎸 4", "99 glassy", "+ + +", "0", "a".repeat(500)])("%j makes no fault", (text) => {
    expect(parseWishes(text).wishes.length).toBeLessThan(2);
  });
});

describe("the vocabulary", () => {
  test.each(WORD_NAMES)("%s has its meaning, targets that some value reaches, and where they come from", (name) => {
    const { meaning, targets, source } = tradeWord(name);
    expect(meaning.length).toBeGreaterThan(10);
    expect(source).toMatch(/source|from memory/);
    for (const { low, high } of targets)
      expect(low ?? Number.NEGATIVE_INFINITY).toBeLessThanOrEqual(high ?? Number.POSITIVE_INFINITY);
    expect(targets.every(({ low, high }) => low !== undefined || high !== undefined)).toBe(true);
    expect(understood(`${name} 4`)).toEqual([["position 4", [name]]]);
  });

  test("no way to say a word is a way to say two", () => {
    const said = WORD_NAMES.flatMap((name) => [name, ...tradeWord(name).also].map((each) => each.replaceAll("-", " ")));
    expect(new Set(said).size).toBe(said.length);
    expect(WAYS_TO_SAY.size).toBe(said.length);
  });
});
