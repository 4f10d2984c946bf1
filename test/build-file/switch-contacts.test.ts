import { describe, expect, test } from "vitest";
import { readBuild } from "../../src/build-file/read-build.ts";
import { Controls, parseSettings } from "../../src/build-file/settings.ts";
import { NAMED_SWITCH_TYPES } from "../../src/build-file/switch-types.ts";
import { LugWords } from "../../src/build-file/words/lug-words.ts";
import { Wiring } from "../../src/wiring/nets.ts";
import { CONTACT_TABLES, groupsIn } from "./contact-tables.ts";

const SPECS: Readonly<Record<string, object>> = {
  "dpdt-on-on-on A1-B2": { type: "dpdt-on-on-on" },
  "dpdt-on-on-on A2-B1": { type: "dpdt-on-on-on", centre: "A2-B1" },
  "rotary 2×4": { type: "rotary", poles: 2, throws: 4 },
};

const parts = (extra: object) => ({
  pickup: { kind: "pickup", coils: { coil: { resistance: "6k", inductance: "2.4H" } } },
  jack: { kind: "jack" },
  ...extra,
});

/** The groups of two lugs and more that a build's nets make of a switch's lugs. */
function groupsOf(input: object, control: string, prefix: string, position: number): string[] {
  const build = readBuild(input);
  const wiring = new Wiring(build);
  const { netOfLug } = wiring.netsIn(parseSettings(new Controls(build), { [control]: position }));
  const byNet = new Map<number, string[]>();
  for (const [index, lug] of wiring.lugs.lugs.entries()) {
    if (!lug.name.startsWith(prefix)) continue;
    const net = netOfLug[index]!;
    byNet.set(net, [...(byNet.get(net) ?? []), lug.name.slice(prefix.length)]);
  }
  return [...byNet.values()].filter((group) => group.length > 1).map((group) => group.sort().join("-"));
}

const expectedIn = (table: string, position: number) => groupsIn(table, position).map((group) => group.join("-"));

test("the hand-written tables cover every named type", () => {
  for (const type of NAMED_SWITCH_TYPES)
    expect(Object.keys(CONTACT_TABLES).some((table) => table.split(" ")[0] === type)).toBe(true);
});

describe.each(Object.keys(CONTACT_TABLES))("a switch of type %s", (table) => {
  const spec = SPECS[table] ?? { type: table };
  const count = CONTACT_TABLES[table]!.length;

  test("joins what the trade's table says, position by position, and has no further position", () => {
    const input = { presolder: 1, parts: parts({ sw: { kind: "switch", ...spec } }), wires: [] };
    for (let position = 1; position <= count; position++)
      expect(groupsOf(input, "sw", "sw.", position)).toEqual(expectedIn(table, position));
    expect(() => groupsOf(input, "sw", "sw.", count + 1)).toThrow(`expected 1 to ${count}`);
  });

  test("joins the same on a pot's shaft", () => {
    const pot = { kind: "pot", resistance: "250k", drives: spec };
    const input = { presolder: 1, parts: parts({ pot }), wires: [] };
    for (let position = 1; position <= count; position++)
      expect(groupsOf(input, "pot.s", "pot.s.", position)).toEqual(expectedIn(table, position));
  });
});

test("a contact table of one's own joins what it says", () => {
  const positions = [
    [["in", "x", "y"]],
    [],
    [
      ["in", "x"],
      ["y", "z"],
    ],
  ];
  const input = { presolder: 1, parts: parts({ own: { kind: "switch", positions } }), wires: [] };
  expect(groupsOf(input, "own", "own.", 1)).toEqual(["in-x-y"]);
  expect(groupsOf(input, "own", "own.", 2)).toEqual([]);
  expect(groupsOf(input, "own", "own.", 3)).toEqual(["in-x", "y-z"]);
});

test("the toggle's frame is a lug to be grounded at, which no position joins to a contact", () => {
  const input = {
    presolder: 1,
    parts: parts({ sw: { kind: "switch", type: "toggle-3" } }),
    wires: [["sw.frame", "jack.sleeve"]],
  };
  expect(new LugWords(readBuild(input)).of("sw.frame")).toMatch(/, frame$/);
  for (let position = 1; position <= 3; position++)
    expect(groupsOf(input, "sw", "sw.", position)).toEqual(expectedIn("toggle-3", position));
});
