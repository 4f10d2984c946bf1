import { describe, expect, it } from "vitest";
import { buildSheet } from "../../src/bench/sheet/build-sheet.ts";
import { jointWords } from "../../src/page/bench/joint/joint-words.ts";
import { picturing } from "../../src/page/drawing/joint/picturing.ts";
import { type JointScene, sceneOf } from "../../src/page/drawing/joint/scene.ts";
import { builds } from "../bench/sheet/guards.ts";
import { casesOf } from "../effort.ts";
import { scheduled } from "./scheduled.ts";

function pictured({ lines, heats, picture }: JointScene) {
  return {
    ends: [...new Set(lines.flatMap(({ soldered }) => soldered))].sort(),
    nowOf: new Set(lines.filter(({ when }) => when === "now").flatMap(({ soldered }) => soldered)),
    hanging: picture.tails.map(({ piece, to, takenBy }) => `${piece}@${to.lug} by ${takenBy}`).sort(),
    heated: heats.map(({ joint }) => `${joint.kind} ${joint.at}`),
  };
}

/** The first and last point of a path. */
function endsOf(d: string): { x: number; y: number }[] {
  const numbers = [...d.matchAll(/-?\d+(\.\d+)?/g)].map(([text]) => Number(text));
  return [numbers.slice(0, 2), numbers.slice(-2)].map(([x, y]) => ({ x: x!, y: y! }));
}

describe.each(casesOf(builds, 20))("the pictures of $name", ({ build }) => {
  const sheet = buildSheet(build);
  const input = picturing(build, sheet);
  const { schedule, laid } = input;

  function expectScheduled(first: number, last: number, of: "joint" | "stage"): void {
    const scene = sceneOf(input, { first, last }, of);
    const [told, drawn] = [scheduled(sheet, first, last), pictured(scene)];
    expect(drawn.ends).toEqual(told.ends);
    expect(drawn.hanging).toEqual(told.hanging);
    expect(drawn.heated).toEqual(told.heated);
    for (const end of told.now) expect(drawn.nowOf, end).toContain(end);
    // A piece is bold where one of its ends comes now, and nowhere else.
    const pieces = new Set(told.now.map((end) => Number(end.split("@")[0])));
    expect(new Set(scene.lines.filter(({ when }) => when === "now").map(({ piece }) => piece))).toEqual(pieces);
  }

  it("have the lugs, wires and ends of the schedule at every joint and every stage", () => {
    for (const { number } of schedule.joints) expectScheduled(number, number, "joint");
    for (const { joints } of sheet.sittings.flatMap(({ stages }) => stages))
      expectScheduled(joints[0]!.number, joints.at(-1)!.number, "stage");
  });

  it("draw every length from lug to lug, and a splice off the lugs of its leads", () => {
    const { lines, picture } = sceneOf(input, { first: 1, last: schedule.joints.length }, "stage");
    expect(picture.tails).toEqual([]);
    expect(lines).toHaveLength(picture.runs.length);
    for (const [index, run] of picture.runs.entries()) {
      const ends = endsOf(lines[index]!.d);
      for (const [side, { lug, isSplice }] of [run.from, run.to].entries()) {
        const { x, y } = laid.find(lug)!;
        const off = Math.hypot(ends[side]!.x - x, ends[side]!.y - y);
        if (isSplice) expect(off, lug).toBeGreaterThan(10);
        else expect(off, lug).toBeLessThan(0.1);
      }
    }
  });

  it("keep the place to heat, letters and what hangs in the frame, and letters off each other", () => {
    for (const { number, ends } of schedule.joints) {
      const { frame, signs, taken, heats } = sceneOf(input, { first: number, last: number }, "joint");
      expect(signs.map(({ text }) => text).join("")).toBe(ends.length < 2 ? "" : "ABCDEFGH".slice(0, ends.length));
      for (const { x, y } of [...heats, ...signs, ...taken].map(({ at }) => at)) {
        expect(x, `joint ${number}`).toBeGreaterThan(frame.x);
        expect(x, `joint ${number}`).toBeLessThan(frame.x + frame.width);
        expect(y, `joint ${number}`).toBeGreaterThan(frame.y);
        expect(y, `joint ${number}`).toBeLessThan(frame.y + frame.height);
      }
      // A disc is 22 across: a quarter of one may be under the next at the worst.
      for (const [index, { at }] of signs.entries())
        for (const other of signs.slice(index + 1))
          expect(Math.hypot(at.x - other.at.x, at.y - other.at.y), `joint ${number}`).toBeGreaterThan(16);
      expect(frame.width, `joint ${number}`).toBeLessThanOrEqual(460);
    }
  });

  it("come with the schedule's own words, its ends one by one", () => {
    for (const joint of schedule.joints) {
      const { ends, action } = jointWords(schedule, sheet, joint);
      expect(ends).toHaveLength(joint.ends.length);
      expect(ends.flatMap(({ waits }) => waits)).toHaveLength(joint.waits.length);
      const textOf = (letter: string) => ends.find((end) => end.letter === letter)!.text;
      // With the ends themselves for their letters it is the sheet's sentence.
      const whole = ends.length < 2 ? action : action.replaceAll(/\b[A-L]\b(?! ?\d)/g, textOf);
      expect(joint.text.toLowerCase()).toContain(whole.toLowerCase());
    }
  });
});
