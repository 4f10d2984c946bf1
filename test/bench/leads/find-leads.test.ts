import { describe, expect, it } from "vitest";
import { answerLeads } from "../../../src/bench/leads/answer-leads.ts";
import type { LeadsRequest } from "../../../src/bench/leads/leads-request.ts";
import { NO_CHECKPOINT } from "../../../src/checkpoint.ts";
import { PresolderError } from "../../../src/errors.ts";
import { type BenchPickup, measured } from "./pickup-on-the-bench.ts";

const EMPTY = { readings: [], kicks: [], compass: [], metal: [], temperature: 20 } as const;

const ask = (request: Partial<LeadsRequest> & Pick<LeadsRequest, "leads">) =>
  answerLeads({ ...EMPTY, ...request }, undefined, NO_CHECKPOINT);

/** Four wires and a drain, worked by hand beside each expectation. */
const FOUR_WIRES: LeadsRequest = {
  ...EMPTY,
  leads: ["red", "white", "grey", "brown", "bare"],
  rows: ["screws", "slugs"],
  temperature: 30,
  readings: [
    { between: ["red", "white"], ohms: 4100 },
    { between: ["grey", "brown"], ohms: 4200 },
    { between: ["red", "grey"], ohms: null },
    { between: ["red", "bare"], ohms: null },
    { between: ["grey", "bare"], ohms: null },
  ],
  metal: [
    { lead: "bare", ohms: 0.4 },
    { lead: "red", ohms: null },
    { lead: "grey", ohms: null },
  ],
  kicks: [
    { row: "screws", between: ["red", "white"], kick: "up" },
    { row: "slugs", between: ["grey", "brown"], kick: "down" },
    { row: "screws", between: ["grey", "brown"], kick: "none" },
    { row: "slugs", between: ["red", "white"], kick: "none" },
  ],
  compass: [
    { row: "screws", draws: "north" },
    { row: "slugs", draws: "south" },
  ],
};

describe("four wires and a drain, worked by hand", () => {
  const answer = ask(FOUR_WIRES);
  const [best] = answer.labellings;

  it("names every lead", () => {
    // The screws draw the needle's north end, so their top is south: a forward coil there kicks down with + on its finish.
    // It kicked up with + on red, so red is the start. The slugs are north and kicked down with + on grey: grey is the start.
    expect(best!.coils.map(({ row, start, finish, magnet }) => [row, start, finish, magnet])).toEqual([
      ["screws", "red", "white", "south"],
      ["slugs", "grey", "brown", "north"],
    ]);
    expect(best!.metal).toEqual({ at: "drain", leads: ["bare"] });
    expect(best!.probability).toBeGreaterThan(0.8);
  });

  it("brings resistances to 20 °C", () => {
    // Copper: 1 + 0.00393 · 10.
    expect(best!.coils[0]!.resistance! / (4100 / 1.0393)).toBeCloseTo(1, 2);
    expect(best!.coils[1]!.resistance! / (4200 / 1.0393)).toBeCloseTo(1, 2);
  });

  it("wires it for humbucking: what kicks up is hot, the coils joined so that both kicks add", () => {
    // Screws rise towards red, slugs towards brown: red hot, white with brown, grey ground. Through both from ground to hot
    // the slugs are passed from start to finish and the screws from finish to start, so their hum cancels.
    const { main, alternatives, agreed } = answer.wiring;
    expect(main).toMatchObject({
      name: "series",
      hot: ["red"],
      link: ["white", "brown"],
      ground: ["grey", "bare"],
      insulate: [],
      cancelsHum: true,
      aids: true,
      kick: "up",
    });
    expect(agreed).toBeGreaterThan(0.8);
    expect(alternatives.map(({ name, hot, ground, insulate }) => [name, hot, ground, insulate])).toEqual([
      ["parallel", ["red", "brown"], ["white", "grey", "bare"], []],
      ["one coil of two", ["red"], ["white", "bare"], ["grey", "brown"]],
      ["one coil of two", ["brown"], ["grey", "bare"], ["red", "white"]],
    ]);
  });

  it("says that start and finish are a convention, and brings its cautions", () => {
    expect(answer.convention).toMatch(/the same to every meter/);
    expect(answer.cautions.join()).toMatch(/Never pull or push the rods.*tape over an open coil/);
  });
});

/** The chance of all labellings, listed or not. */
const total = ({ labellings, notListed }: ReturnType<typeof ask>) =>
  labellings.reduce((sum, { probability }) => sum + probability, notListed.probability);

describe("too little, or too much that does not fit", () => {
  it("takes nothing for known where nothing was measured, and asks for the test that tells most", () => {
    const answer = ask({ leads: ["a", "b", "c"] });
    expect(answer.certain).toEqual([]);
    expect(answer.notListed.count).toBeGreaterThan(1000);
    expect(total(answer)).toBeCloseTo(1, 9);
    expect(answer.next!.bits).toBeGreaterThan(0.5);
    // No lead is anything more than another.
    for (const { may } of answer.leads)
      expect(may).toEqual(
        answer.leads[0]!.may.map((each) =>
          expect.objectContaining({ probability: expect.closeTo(each.probability, 6) }),
        ),
      );
  });

  it("leaves both rows open where a meter alone was used, and asks for a tap or a compass", () => {
    const { kicks: _k, compass: _c, ...meterOnly } = FOUR_WIRES;
    const { labellings, next, certain } = ask(meterOnly);
    expect(labellings[0]!.probability).toBeLessThan(0.26);
    expect(certain).toContain("Red and white are the two ends of one coil.");
    expect(["kick", "compass"]).toContain(next!.test.kind);
  });

  it("calls a coil open that no pair of leads can read", () => {
    const answer = ask({
      leads: ["red", "brown"],
      coils: 1,
      metal: "none",
      readings: [{ between: ["red", "brown"], ohms: null }],
    });
    expect(answer.labellings[0]!.coils[0]).toMatchObject({ broken: true, resistance: null });
    expect(answer.wiring.main).toBeNull();
    expect(answer.wiring.text).toMatch(/open inside/);
  });

  it("answers where readings contradict each other, and names the one in doubt", () => {
    const { labellings, doubts, next } = ask({
      ...FOUR_WIRES,
      readings: [...FOUR_WIRES.readings, { between: ["white", "red"], ohms: null }],
    });
    expect(labellings[0]!.coils[0]).toMatchObject({ start: "red", finish: "white", broken: false });
    expect(doubts.map(({ path }) => path)).toEqual(["readings.5"]);
    expect(next === null || next.bits > 0).toBe(true);
  });

  it("answers where nothing fits anything, still with probabilities that make 1", () => {
    const answer = ask({
      leads: ["a", "b", "c"],
      coils: 1,
      readings: [
        { between: ["a", "b"], ohms: 0.2 },
        { between: ["b", "c"], ohms: 6000 },
        { between: ["a", "c"], ohms: 90 },
        { between: ["a", "b"], ohms: 15e6 },
      ],
    });
    expect(total(answer)).toBeCloseTo(1, 9);
    expect(answer.doubts.length).toBeGreaterThan(0);
  });

  it("says what no test can tell: which coil is next to which lead, where their joint is hidden", () => {
    const hidden: BenchPickup = {
      coils: 2,
      nets: [["0s"], ["0f", "1f"], ["1s", "metal"]],
      leads: [0, 2],
      magnets: ["N", "S"],
      open: [false, false],
    };
    const { cannotTell, wiring, labellings } = ask(measured(hidden, [4000, 4100]));
    expect(cannotTell.join(" ")).toMatch(
      /whether red is the .* of the coil of the s\w+ or the .* of the coil of the s\w+\..*joint is not brought out/,
    );
    expect(labellings[0]!.probability).toBeCloseTo(labellings[1]!.probability, 9);
    expect(wiring).toMatchObject({
      main: { name: "joined inside", ground: ["white"], hot: ["red"], cancelsHum: true },
    });
    expect(wiring.agreed).toBeGreaterThan(0.95);
  });
});

describe("a result that contradicts others", () => {
  // Red to yellow spans both coils' 4.0k, and each row's taps say that yellow is their joint; 2 k from red to black cannot be.
  const contradicted: LeadsRequest = {
    ...EMPTY,
    leads: ["red", "black", "yellow"],
    rows: ["top", "bottom"],
    metal: "none",
    readings: [
      { between: ["red", "black"], ohms: 2000 },
      { between: ["red", "yellow"], ohms: 4000 },
    ],
    kicks: [
      { row: "top", between: ["red", "black"], kick: "up" },
      { row: "bottom", between: ["black", "yellow"], kick: "down" },
      { row: "top", between: ["red", "yellow"], kick: "up" },
      { row: "bottom", between: ["red", "yellow"], kick: "none" },
    ],
    compass: [
      { row: "top", draws: "south" },
      { row: "bottom", draws: "north" },
    ],
  };

  it("is asked for once more, and no third time where it stays as it was", () => {
    const asked: string[] = [];
    let known = contradicted;
    const shown: Record<string, number> = { "black red": 2000, "red yellow": 4000, "black yellow": 4100 };
    for (let answer = ask(known); answer.next && asked.length < 12; answer = ask(known)) {
      const { test } = answer.next;
      asked.push(JSON.stringify(test));
      if (test.kind === "reading") {
        const ohms = shown[[...test.between].sort().join(" ")]!;
        known = { ...known, readings: [...known.readings, { between: test.between, ohms }] };
      } else if (test.kind === "kick") {
        const same = known.kicks.find(({ row, between }) => row === test.row && between.join() === test.between.join());
        known = { ...known, kicks: [...known.kicks, same ?? { ...test, kick: "none" }] };
      } else break;
    }
    expect(asked.length).toBeLessThan(12);
    for (const test of asked) expect(asked.filter((each) => each === test).length, test).toBeLessThanOrEqual(2);
  });

  it("had twice is named once, and another result is doubted with it", () => {
    const twice = { ...FOUR_WIRES, readings: [...FOUR_WIRES.readings] };
    const odd = { between: ["red", "brown"] as const, ohms: 2000 };
    const { doubts } = ask({ ...twice, readings: [...twice.readings, odd, odd] });
    expect(doubts.filter(({ text }) => text.startsWith("red to brown"))).toHaveLength(1);
    expect(doubts[0]!.text).toContain("made more than once: look for what is wrong with another result");
  });
});

describe("the next test", () => {
  it("is a second look at what a likely labelling takes for misread, where the likeliest takes nothing so", () => {
    // Two tops alike are rare, and a compass is misread now and then: 0.05 · 0.97² against 0.45 · 0.97 · 0.03 twice.
    const alike = { row: "slugs", draws: "north" } as const;
    const once = ask({ ...FOUR_WIRES, compass: [FOUR_WIRES.compass[0]!, alike] });
    expect(once.next!.test.kind).toBe("compass");
    const twice = ask({ ...FOUR_WIRES, compass: [FOUR_WIRES.compass[0]!, FOUR_WIRES.compass[0]!, alike, alike] });
    expect(twice.labellings[0]!.coils.map(({ magnet }) => magnet)).toEqual(["south", "south"]);
    expect(twice.labellings[0]!.probability).toBeGreaterThan(0.9);
    expect(twice.next).toBeNull();
  });

  it("leads to the whole answer in fewer tests than there are, from nothing", () => {
    const truth: BenchPickup = {
      coils: 2,
      nets: [["0s"], ["0f"], ["1s"], ["1f"]],
      leads: [2, 0, 1, 3],
      magnets: ["S", "N"],
      open: [false, false],
    };
    const all = measured(truth, [4100, 4300]);
    let known: LeadsRequest = { ...all, readings: [], kicks: [], compass: [], metal: "none" };
    let made = 0;
    for (let answer = ask(known); answer.next; answer = ask(known)) {
      const { test } = answer.next;
      made += 1;
      expect(made).toBeLessThan(20);
      const isPair = (between: readonly string[]) => "between" in test && between.join() === test.between.join();
      if (test.kind === "reading")
        known = { ...known, readings: [...known.readings, all.readings.find(({ between }) => isPair(between))!] };
      if (test.kind === "compass")
        known = { ...known, compass: [...known.compass, all.compass.find(({ row }) => row === test.row)!] };
      if (test.kind === "kick")
        known = {
          ...known,
          kicks: [...known.kicks, all.kicks.find(({ row, between }) => row === test.row && isPair(between))!],
        };
    }
    const [best] = ask(known).labellings;
    // Nets 2 0 1 3: red is the slugs' start, white the screws' start, grey their finish, brown the slugs' finish.
    expect(best!.coils.map(({ start, finish }) => [start, finish])).toEqual([
      ["white", "grey"],
      ["red", "brown"],
    ]);
    expect(best!.probability).toBeGreaterThan(0.8);
    expect(made).toBeLessThanOrEqual(10);
  });
});

function refusalOf(request: Partial<LeadsRequest> & Pick<LeadsRequest, "leads">) {
  try {
    ask(request);
  } catch (error) {
    if (error instanceof PresolderError) return error.faults[0]!;
  }
  throw new Error("it was not refused");
}

describe("a question that cannot be read", () => {
  it.each([
    ["leads.1", /"red" is there twice/, { leads: ["red", "red"] }],
    [
      "readings.0.between.1",
      /no lead "whit", perhaps "white"|no lead "whit".*expected one of "red", "white"/,
      { leads: ["red", "white"], readings: [{ between: ["red", "whit"], ohms: 1 }] },
    ],
    [
      "readings.0.between",
      /two different leads/,
      { leads: ["red", "white"], readings: [{ between: ["red", "red"], ohms: 1 }] },
    ],
    [
      "kicks.0.row",
      /no row "slugs"/,
      { leads: ["red", "white"], rows: ["poles"], kicks: [{ row: "slugs", between: ["red", "white"], kick: "up" }] },
    ],
    ["compass.0.row", /no row "x"/, { leads: ["red", "white"], compass: [{ row: "x", draws: "north" }] }],
    ["metal.0.lead", /no lead "blue"/, { leads: ["red", "white"], metal: [{ lead: "blue", ohms: 0 }] }],
    ["rows", /expected one row for each coil/, { leads: ["red", "white"], coils: 1, rows: ["screws", "slugs"] }],
  ] as const)("names %s", (path, message, request) => {
    const fault = refusalOf(request as Parameters<typeof refusalOf>[0]);
    expect(fault.path).toBe(path);
    expect(fault.message).toMatch(message);
  });
});
