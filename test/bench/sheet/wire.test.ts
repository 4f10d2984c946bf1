import { describe, expect, it } from "vitest";
import { buildSheet } from "../../../src/bench/sheet/build-sheet.ts";
import { DEFAULT_SHEET_OPTIONS, type SheetOptions } from "../../../src/bench/sheet/options.ts";
import { DEFAULT_ALLOWANCES } from "../../../src/bench/sheet/wire/allowances.ts";
import { readBuild } from "../../../src/build-file/read-build.ts";
import type { Build } from "../../../src/build-file/schema.ts";
import { Wiring } from "../../../src/wiring/nets.ts";
import { onePickup } from "../../fixtures/circuits.ts";
import { builds } from "./guards.ts";

const sheetOf = (build: Build, options: Partial<SheetOptions> = {}) =>
  buildSheet(build, { ...DEFAULT_SHEET_OPTIONS, ...options }, { readings: [], audit: [] });

const preset = (name: string) => builds.find((each) => each.name === name)!.build;

function sidesOf(build: Build, { cuts }: ReturnType<typeof sheetOf>) {
  const wiring = new Wiring(build);
  const { netOfLug } = wiring.wiredNets();
  const net = (lug: string) => netOfLug[wiring.lugs.indexOf(lug)];
  const isGround = ({ from }: (typeof cuts)[number]) => net(from) === net("jack.sleeve");
  const colours = (which: typeof cuts) =>
    new Set(which.filter(({ kind }) => kind !== "bare").map(({ colour }) => colour));
  return { ground: colours(cuts.filter(isGround)), hot: colours(cuts.filter((cut) => !isGround(cut))) };
}

describe("colours", () => {
  it.each(builds)("of $name: ground has its own", ({ build }) => {
    const { ground, hot } = sidesOf(build, sheetOf(build));
    expect(ground.size).toBeLessThanOrEqual(1);
    for (const colour of ground) expect(hot).not.toContain(colour);
  });

  it("are those of the reels that a person has, and two are enough", () => {
    const build = preset("hss-push-pull-split");
    const reels = [
      { colour: "yellow", kind: "cloth" as const },
      { colour: "black", kind: "cloth" as const },
    ];
    const sheet = sheetOf(build, { reels });
    const { ground, hot } = sidesOf(build, sheet);
    expect([...ground]).toEqual(["black"]);
    expect([...hot]).toEqual(["yellow"]);
    // Nobody named a bare or a plastic one.
    expect(new Set(sheet.cuts.map(({ kind }) => kind))).toEqual(new Set(["cloth"]));
  });

  it("go round the hot nets where there are more of them", () => {
    const reels = ["red", "green", "white"].map((colour) => ({ colour, kind: "plastic" as const }));
    const build = preset("hss-push-pull-split");
    const { ground, hot } = sidesOf(build, sheetOf(build, { reels }));
    expect([...ground]).toEqual(["green"]);
    expect(hot).toEqual(new Set(["red", "white"]));
  });

  it("that must serve both are told, to be marked with tape", () => {
    const build = preset("singles-neck-middle");
    const { notes } = sheetOf(build, { reels: [{ colour: "white", kind: "plastic" }] });
    expect(notes[0]).toMatch(/white wire is both ground and hot here: mark the ends of one of them with tape/);
  });

  it("of the build itself are kept, and told where they clash", () => {
    const file = onePickup() as { wires: unknown[] };
    const wires = file.wires.map((wire) => {
      if (!Array.isArray(wire) || !wire.some((lug: string) => lug.startsWith("jack"))) return wire;
      return { from: wire[0], to: wire[1], colour: "Black" };
    });
    expect(sheetOf(readBuild({ ...file, wires })).notes[0]).toMatch(/black wire is both ground and hot/);
  });
});

describe("reels", () => {
  const build = preset("singles-neck-middle");
  const cuts = sheetOf(build).cuts.filter(({ colour }) => colour === "white");
  const metres = cuts.reduce((sum, { cut }) => sum + cut, 0);
  const longest = Math.max(...cuts.map(({ cut }) => cut));
  const use = (has?: number) =>
    sheetOf(build, {
      reels: [
        { colour: "white", kind: "plastic", metres: has },
        { colour: "black", kind: "plastic" },
      ],
    });

  it("are used for the sum of their pieces, and suffice with the longest once more", () => {
    const enough = use(metres + longest + 0.001);
    expect(enough.reels.find(({ colour }) => colour === "white")).toMatchObject({
      suffices: true,
      pieces: cuts.length,
    });
    expect(enough.reels.find(({ colour }) => colour === "white")!.metres).toBeCloseTo(metres, 6);
    expect(enough.reels.find(({ colour }) => colour === "white")!.withSpare).toBeCloseTo(metres + longest, 6);
    expect(enough.notes.join()).not.toMatch(/too short/);
  });

  it("that are too short for one mistake are told", () => {
    const short = use(metres + longest / 2);
    expect(short.reels.find(({ colour }) => colour === "white")!.suffices).toBe(false);
    expect(short.notes.join()).toMatch(/reel of white plastic wire is too short/);
  });

  it("of unknown length are neither", () => {
    expect(use().reels.map(({ suffices }) => suffices)).toEqual(expect.arrayContaining([null]));
  });
});

describe("kinds of wire", () => {
  it("follow what the person takes for what", () => {
    const { cuts } = sheetOf(preset("singles-neck-middle"), {
      kinds: { hot: "cloth", ground: "plastic", jack: "screened" },
    });
    const kinds = (lug: string) => cuts.find(({ from, to }) => [from, to].includes(lug))!;
    expect(kinds("jack.tip")).toMatchObject({ kind: "screened" });
    expect(kinds("jack.sleeve")).toMatchObject({ kind: "plastic", ready: expect.stringMatching(/strip/) });
    expect(kinds("lever.A0")).toMatchObject({ kind: "cloth", ready: expect.stringMatching(/push the braid back/) });
    expect(cuts.filter(({ means }) => means === "bus wire").map(({ kind }) => kind)).toEqual(["bare", "bare"]);
  });
});

describe("reels of several kinds", () => {
  it("serve what their kind is wanted for, and else what there is", () => {
    const reels = [
      { colour: "white", kind: "plastic" as const },
      { colour: "yellow", kind: "cloth" as const },
      { colour: "black", kind: "plastic" as const },
    ];
    const kinds = { hot: "cloth", ground: "cloth", jack: "screened" } as const;
    const { cuts } = sheetOf(preset("singles-neck-middle"), { reels, kinds });
    const wire = (lug: string) => cuts.find(({ from, to }) => [from, to].includes(lug))!;
    expect(wire("lever.A0")).toMatchObject({ colour: "yellow", kind: "cloth" });
    expect(wire("jack.sleeve")).toMatchObject({ colour: "black", kind: "plastic" });
    const owned = reels.map(({ colour, kind }) => `${colour} ${kind}`);
    for (const { colour, kind } of cuts) expect(owned).toContain(`${colour} ${kind}`);
  });
});

describe("lengths", () => {
  const at = (x: number, y: number) => ({ place: { x, y } });
  const file = onePickup() as { parts: Record<string, object>; wires: unknown[] };
  const build = readBuild({
    ...file,
    parts: {
      ...file.parts,
      volume: { ...file.parts.volume, ...at(0.03, 0.08) },
      tone: { ...file.parts.tone, ...at(0.13, 0.08) },
      jack: { kind: "jack", ...at(-0.07, 0.15) },
      claw: { kind: "terminal", role: "claw", ...at(-0.03, -0.05) },
      foil: { kind: "terminal", role: "shield", ...at(0.03, 0.07) },
    },
    wires: [...file.wires, ["claw", "volume.case"], ["foil", "volume.case"]],
  });
  const { slack, jackLoop, clawLoop, foilLength } = DEFAULT_ALLOWANCES;
  const cut = (lug: string, options: Partial<SheetOptions> = {}) =>
    sheetOf(build, options).cuts.find(({ from, to }) => [from, to].includes(lug))!;

  it("run along the guard's edges", () => {
    expect(cut("jack.tip").run).toBeCloseTo(0.17, 9);
  });

  it("have a service loop where they leave the guard", () => {
    // 170 mm, 90 mm of loop and 2 × 6 mm, rounded up to 5 mm.
    expect(cut("jack.tip").cut).toBeCloseTo(0.275, 9);
    expect(cut("jack.tip").cut).toBeGreaterThanOrEqual(0.17 + jackLoop);
    const claw = cut("claw");
    expect(claw.cut).toBeGreaterThanOrEqual(claw.run + clawLoop);
    expect(cut("foil").cut).toBeGreaterThanOrEqual(foilLength);
  });

  it("have slack on the guard, and bare ends as told", () => {
    const hot = cut("tone.2");
    expect(hot.cut).toBeGreaterThanOrEqual(hot.run + slack);
    expect(hot.strips).toEqual([0.006, 0.006]);
    const allowances = { ...DEFAULT_ALLOWANCES, slack: 0, strip: 0, jackLoop: 0 };
    expect(cut("jack.tip", { allowances }).cut).toBeCloseTo(0.17, 9);
  });

  it("of a jumper have no slack: from lug to lug and two bare ends", () => {
    const { cuts } = sheetOf(preset("hss-push-pull-split"));
    const jumpers = cuts.filter(({ means }) => means === "jumper");
    expect(jumpers.length).toBeGreaterThan(0);
    for (const jumper of jumpers) {
      expect(jumper.cut).toBeGreaterThanOrEqual(jumper.run + 0.012 - 1e-9);
      expect(jumper.cut).toBeLessThan(jumper.run + 0.012 + 0.005);
    }
  });

  it("that the build gives are kept", () => {
    const wires = file.wires.map((wire) =>
      JSON.stringify(wire) === '["volume.2","jack.tip"]' ? { from: "volume.2", to: "jack.tip", length: "0.4m" } : wire,
    );
    const own = sheetOf(readBuild({ ...file, wires })).cuts.find(({ to }) => to === "jack.tip");
    expect(own!.cut).toBe(0.4);
  });
});

describe("a bared end", () => {
  it("goes on to the neighbouring lug instead of a jumper, bared for the way", () => {
    const { cuts, sittings } = sheetOf(preset("hss-push-pull-split"));
    const wire = cuts.find(({ onTo }) => onTo.length > 0)!;
    expect([wire.from, wire.to, ...wire.onTo]).toEqual(["tone1.1", "lever.B3", "lever.B2"]);
    expect(wire.strips[1]).toBeGreaterThan(wire.strips[0]);
    const texts = sittings.flatMap(({ stages }) => stages.flatMap(({ joints }) => joints.map(({ text }) => text)));
    expect(texts.join("\n")).toMatch(/bare \d+ mm and on to lever\.B2/);
    expect(texts.join("\n")).toMatch(/lever\.B2: the bared end of white wire \d+, on from lever\.B3/);
  });

  it("never crosses from one end of an open frame to the other", () => {
    const { cuts } = sheetOf(preset("singles-neck-middle"));
    const commons = cuts.find(({ from, to }) => [from, to].sort().join() === "lever.A0,lever.B0")!;
    expect(commons.means).toBe("jumper");
    expect(commons.cut).toBeGreaterThan(0.035);
  });
});

describe("a cap's leg", () => {
  const facing = (turns: readonly [number, number]) => {
    const build = structuredClone(preset("singles-shared-cap"));
    const place = (x: number, turn: number) => ({ x, y: 0.1, turn });
    build.parts.tone1 = { ...build.parts.tone1!, place: place(0.03, turns[0]) };
    build.parts.tone2 = { ...build.parts.tone2!, place: place(-0.03, turns[1]) };
    return sheetOf(build).pieces.filter(({ stops }) => stops.includes("tone1.2") && stops.includes("tone2.2"));
  };

  it("runs through two lugs where they face each other, and joins them with a wire where they do not", () => {
    const turns = [0, 90, 180, 270] as const;
    const all = turns.flatMap((a) => turns.map((b) => facing([a, b])));
    expect(all.every((pieces) => pieces.length === 1)).toBe(true);
    const byLeg = all.filter(([piece]) => piece!.means === "leg");
    expect(byLeg).toHaveLength(1);
    expect(byLeg[0]![0]!.stops).toEqual(["cap.a", "tone1.2", "tone2.2"]);
  });
});
