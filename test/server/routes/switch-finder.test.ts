import { describe, expect, it } from "vitest";
import { parseLongForm } from "../../../src/build-file/build-file.ts";
import { switchAnswerSchema } from "../../../src/contract/bench/switch-finder.ts";
import { PLAN } from "../plan.ts";
import { useService } from "../service.ts";

const service = useService();
const post = (payload: object) => service.app.inject({ method: "POST", url: "/api/switch", payload });

const LUGS = ["1", "2", "3"];
const TWO_THROWS = [
  { between: ["1", "2"], positions: [1] },
  { between: ["2", "3"], positions: [2] },
];
/** One pickup through a small switch, on in its second position. */
const guard = (sw: object = { kind: "switch", type: "spdt", label: "Mute", place: { x: 0.1, y: 0 } }) => ({
  presolder: 1,
  parts: {
    pickup: { kind: "pickup", coils: { coil: { resistance: "6k", inductance: "2.4H" } } },
    sw,
    jack: { kind: "jack" },
  },
  wires: [
    ["pickup.hot", "sw.A2"],
    { from: "sw.A0", to: "jack.tip", colour: "white" },
    ["pickup.ground", "jack.sleeve"],
  ],
});

describe("POST /api/switch", () => {
  it("tells a small switch from two touches, with its text, its part and what was never touched", async () => {
    const reply = await post({ lugs: LUGS, positions: 2, beeps: TWO_THROWS });
    expect(reply.statusCode).toBe(200);
    const { tables, ...rest } = switchAnswerSchema.parse(reply.json());
    expect(rest).toMatchObject({ done: true, isKnown: true, next: null, tried: 2, untouched: 1, contradictions: [] });
    expect(rest.text).toBe(
      "It is a small switch, on-on, one pole (SPDT), or works as one: no other known switch beeps so. A switch of no known type could still differ: 1 pair of lugs was never touched.",
    );
    expect(tables[0]).toMatchObject({
      known: { type: "spdt", lugs: { 1: "A1", 2: "A0", 3: "A2" } },
      positions: [[["1", "2"]], [["2", "3"]]],
      poles: [{ commons: ["2"], throws: ["1", "3"] }],
      part: { kind: "switch", type: "spdt" },
      text: "2 is the common, 1 and 3 its throws.",
    });
  });

  it("names the two lugs to touch first, and how likely it is to beep where", async () => {
    const { next, tables, further, remaining } = (await post({ lugs: LUGS, positions: 2 })).json();
    expect(next.between).toEqual(["1", "2"]);
    expect(next.outcomes.map(({ share }: { share: number }) => share)).toEqual([1 / 3, 1 / 3, 1 / 3]);
    expect([tables.length + further.tables, remaining.tables]).toEqual([6, 6]);
    expect(remaining.bits).toBeCloseTo(Math.log2(6), 9);
  });

  it("puts it in the guard where its like was, wires on the lugs that do the same job, drawn as found", async () => {
    const lugs = LUGS.map((name, x) => ({ name, spot: { x: name === "3" ? 0 : x + 1, y: 0 } }));
    const { guard: found, asks } = (
      await post({ lugs, positions: 2, beeps: TWO_THROWS, build: guard(), part: "sw" })
    ).json();
    expect(asks).toEqual([]);
    expect(found.parts.sw).toEqual({
      kind: "switch",
      type: "spdt",
      lugRows: [["A2", "A1", "A0"]],
      label: "Mute",
      place: { x: 0.1, y: 0 },
    });
    expect(found.wires).toEqual(guard().wires);
    expect(parseLongForm(found).parts.sw).toMatchObject({ lugRows: [["A2", "A1", "A0"]] });
  });

  it("asks where wires go whose job it cannot tell, and moves them there", async () => {
    const build = guard({ kind: "switch", type: "dpdt" });
    const own = [
      { between: ["1", "2"], positions: [1, 2] },
      { between: ["2", "3"], positions: [2] },
      { between: ["1", "3"], positions: [2] },
    ];
    const asked = (await post({ lugs: LUGS, positions: 2, beeps: own, build, part: "sw" })).json();
    expect([asked.done, asked.isKnown, asked.guard]).toEqual([true, false, null]);
    expect(asked.asks).toEqual([
      { lug: "A0", wires: ["jack.tip"] },
      { lug: "A2", wires: ["pickup.hot"] },
    ]);
    const moves = { A0: "3", A2: "1" };
    const moved = (await post({ lugs: LUGS, positions: 2, beeps: own, build, part: "sw", moves })).json();
    expect(moved.asks).toEqual([]);
    expect(moved.guard.wires.slice(0, 2)).toEqual([
      ["pickup.hot", "sw.1"],
      { from: "sw.3", to: "jack.tip", colour: "white" },
    ]);
    expect(parseLongForm(moved.guard).parts.sw).toMatchObject({ positions: [[["1", "2"]], [["1", "2", "3"]]] });
  });

  it("reads a plan as well, and leaves its lever's wires where they are", async () => {
    const lugs = Array.from({ length: 8 }, (_, index) => String(index + 1));
    const {
      guard: found,
      asks,
      tables,
    } = (await post({ lugs, positions: 5, beeps: [], build: PLAN, part: "lever" })).json();
    expect(tables[0].known.type).toBe("lever-5");
    expect(asks).toEqual([]);
    expect(parseLongForm(found).parts.lever).toMatchObject({ kind: "switch", type: "lever-5" });
  });

  const beep = (rest: object) => ({ lugs: LUGS, positions: 2, beeps: [{ between: ["1", "2"], ...rest }] });
  it.each([
    ["one lug", { lugs: ["1"], positions: 2 }, "lugs"],
    ["a lug twice", { lugs: ["1", "2", "1"], positions: 2 }, "lugs.2"],
    ["half of the spots", { lugs: [{ name: "1", spot: { x: 0, y: 0 } }, "2"], positions: 2 }, "lugs.1.spot"],
    ["a spot twice", { lugs: ["1", "2"].map((name) => ({ name, spot: { x: 0, y: 0 } })), positions: 2 }, "lugs.1.spot"],
    ["no position", { lugs: LUGS, positions: 0 }, "positions"],
    [
      "a strange lug",
      { lugs: LUGS, positions: 2, beeps: [{ between: ["1", "9"], positions: [] }] },
      "beeps.0.between.1",
    ],
    [
      "a lug with itself",
      { lugs: LUGS, positions: 2, beeps: [{ between: ["1", "1"], positions: [] }] },
      "beeps.0.between.1",
    ],
    ["a position too many", beep({ positions: [1, 3] }), "beeps.0.positions.1"],
    ["a single position too many", beep({ position: 3, beeps: true }), "beeps.0.position"],
    [
      "between no neighbours",
      { ...beep({ betweenPositions: [1, 3], beeps: true }), positions: 3 },
      "beeps.0.betweenPositions",
    ],
    ["neither positions nor position", beep({}), "beeps.0.positions"],
    ["both", beep({ positions: [1], position: 1 }), "beeps.0.positions"],
    ["a position without a beep", beep({ position: 1 }), "beeps.0.beeps"],
    ["too sure an error", { lugs: LUGS, positions: 2, errors: 0.5 }, "errors"],
    ["an unknown key", { lugs: LUGS, positions: 2, beep: [] }, "beep"],
    ["a guard without its switch", { lugs: LUGS, positions: 2, build: guard() }, "part"],
    ["no such switch", { lugs: LUGS, positions: 2, build: guard(), part: "jack" }, "part"],
    ["a switch without its guard", { lugs: LUGS, positions: 2, part: "sw" }, "part"],
    ["a move from nowhere", { lugs: LUGS, positions: 2, build: guard(), part: "sw", moves: { A9: "1" } }, "moves.A9"],
    ["a move to nowhere", { lugs: LUGS, positions: 2, build: guard(), part: "sw", moves: { A0: "9" } }, "moves.A0"],
    [
      "a guard that cannot be read",
      { lugs: LUGS, positions: 2, build: { presolder: 1, parts: {} }, part: "sw" },
      "build.wires",
    ],
  ])("names the field at fault: %s", async (_, payload, path) => {
    const reply = await post(payload);
    expect(reply.statusCode).toBe(400);
    expect(reply.json().errors[0].path).toBe(path);
  });
});
