import { describe, expect, test } from "vitest";
import { auditBuild, FINDING_CODES, type Finding, type FindingCode } from "../../src/bench/audit/index.ts";
import {
  buildOf,
  type Changes,
  type Guard,
  humbucker,
  single,
  splitHumbucker,
  threeSingles,
  twoHumbuckers,
} from "./guards.ts";

interface WrongBuild {
  readonly wrong: string;
  readonly guard: Guard;
  readonly changes: Changes;
  readonly expected: Partial<Finding>;
}

const rewire = (remove: Changes["remove"], add: Changes["add"]): Changes => ({
  ...(remove ? { remove } : {}),
  ...(add ? { add } : {}),
});

const WELL_WIRED: Readonly<Record<string, Guard>> = { threeSingles, twoHumbuckers, splitHumbucker };

/** For every code, a guard wired so that it must fire; the same guards unharmed are the cases where it must not. */
const WRONG_BUILDS: Readonly<Record<FindingCode, readonly WrongBuild[]>> = {
  "jack-unwired": [
    {
      wrong: "no wire on the tip",
      guard: threeSingles,
      changes: rewire([["volume.2", "jack.tip"]], []),
      expected: { lugs: ["jack.tip"], settings: [], severity: "fault" },
    },
    {
      wrong: "no wire on the sleeve",
      guard: threeSingles,
      changes: rewire([["volume.case", "jack.sleeve"]], []),
      expected: { lugs: ["jack.sleeve"], settings: [] },
    },
  ],
  "jack-swapped": [
    {
      wrong: "tip and sleeve exchanged",
      guard: threeSingles,
      changes: rewire(
        [
          ["volume.2", "jack.tip"],
          ["volume.case", "jack.sleeve"],
        ],
        [
          ["volume.2", "jack.sleeve"],
          ["volume.case", "jack.tip"],
        ],
      ),
      expected: {
        lugs: ["jack.tip", "jack.sleeve", "volume.case", "tone1.case", "tone2.case", "claw"],
        settings: [],
        severity: "fault",
      },
    },
  ],
  "hot-shorted": [
    {
      wrong: "the switch's common touches the volume's case",
      guard: threeSingles,
      changes: rewire([], [["lever.A0", "volume.case"]]),
      expected: { lugs: ["lever.A0", "volume.case"], settings: [], severity: "fault" },
    },
    {
      wrong: "the middle pickup's lug touches ground: dead wherever the switch meets it",
      guard: threeSingles,
      changes: rewire([], [["lever.A2", "tone1.case"]]),
      expected: { lugs: ["lever.A2", "tone1.case"], settings: [{ lever: 2 }, { lever: 3 }, { lever: 4 }] },
    },
    {
      wrong: "the wiper's wire touches the sleeve",
      guard: threeSingles,
      changes: rewire([], [["jack.tip", "jack.sleeve"]]),
      expected: { lugs: ["jack.tip", "jack.sleeve"], settings: [] },
    },
  ],
  "dead-position": [
    {
      wrong: "the neck pickup's hot is off",
      guard: threeSingles,
      changes: rewire([["neck.hot", "lever.A3"]], []),
      expected: { settings: [{ lever: 5 }], severity: "fault" },
    },
    {
      wrong: "the switch's common leads nowhere",
      guard: threeSingles,
      changes: rewire([["lever.A0", "volume.3"]], []),
      expected: { settings: [] },
    },
  ],
  "switch-mutes": [
    {
      wrong: "a toggle that grounds the tip",
      guard: threeSingles,
      changes: {
        parts: { mute: { kind: "switch", type: "spdt" } },
        add: [
          ["mute.A0", "jack.tip"],
          ["mute.A2", "jack.sleeve"],
        ],
      },
      expected: { settings: [{ mute: 2 }], severity: "note" },
    },
  ],
  "pickup-silent": [
    {
      wrong: "the middle pickup has no ground",
      guard: threeSingles,
      changes: rewire([["middle.ground", "volume.case"]], []),
      expected: { lugs: ["middle.ground", "middle.hot"], settings: [], severity: "fault" },
    },
    {
      wrong: "the middle pickup's leads meet at the ground",
      guard: threeSingles,
      changes: rewire([["middle.hot", "lever.A2"]], [["middle.hot", "volume.case"]]),
      expected: { lugs: ["middle.ground", "middle.hot"] },
    },
  ],
  "coil-silent": [
    {
      wrong: "the junction of the coils is grounded for good",
      guard: splitHumbucker,
      changes: rewire([["bridge.slug.start", "tone.s.A0"]], [["bridge.slug.start", "volume.case"]]),
      expected: { lugs: ["bridge.screw.start", "bridge.screw.finish"], severity: "warning" },
    },
  ],
  "part-unconnected": [
    {
      wrong: "the cap's far leg is free",
      guard: splitHumbucker,
      changes: rewire([["cap.b", "tone.case"]], []),
      expected: { lugs: ["cap.a", "cap.b"], severity: "warning" },
    },
    {
      wrong: "a resistor with both ends on ground",
      guard: threeSingles,
      changes: {
        parts: { spare: { kind: "resistor", resistance: "100k" } },
        add: [
          ["spare.a", "volume.case"],
          ["spare.b", "tone1.case"],
        ],
      },
      expected: { lugs: ["spare.a", "spare.b"] },
    },
  ],
  "control-no-effect": [
    {
      wrong: "the tone's cap leg lifted off ground",
      guard: splitHumbucker,
      changes: rewire([["cap.b", "tone.case"]], []),
      expected: { lugs: ["tone.1", "tone.2", "tone.3"], settings: [], severity: "fault" },
    },
    {
      wrong: "a push-pull whose throw leads nowhere",
      guard: splitHumbucker,
      changes: rewire([["tone.s.A2", "volume.3"]], []),
      expected: { lugs: ["tone.s.A0"] },
    },
  ],
  "tone-never-reaches": [
    {
      wrong: "the commons of the switch's two poles are not joined: the first tone",
      guard: threeSingles,
      changes: rewire([["lever.A0", "lever.B0"]], []),
      expected: { lugs: ["tone1.1", "tone1.2", "tone1.3"], settings: [], severity: "fault" },
    },
  ],
  "position-without-tone": [
    {
      wrong: "no tone on the bridge",
      guard: threeSingles,
      changes: {},
      expected: { settings: [{ lever: 1 }], severity: "note" },
    },
  ],
  "case-ungrounded": [
    {
      wrong: "the cap's case has no ground wire",
      guard: threeSingles,
      changes: rewire([["tone2.case", "volume.case"]], []),
      expected: { lugs: ["tone2.case", "cap.b"], settings: [], severity: "fault" },
    },
    {
      wrong: "a case that carries nothing has no ground wire",
      guard: threeSingles,
      changes: rewire([["tone1.case", "volume.case"]], []),
      expected: { lugs: ["tone1.case"], severity: "warning" },
    },
  ],
  "case-hot": [
    {
      wrong: "an ungrounded case touches the hot",
      guard: threeSingles,
      changes: rewire([["tone1.case", "volume.case"]], [["tone1.case", "lever.A0"]]),
      expected: { settings: [], severity: "fault" },
    },
  ],
  "strings-ungrounded": [
    {
      wrong: "the claw's wire is off",
      guard: threeSingles,
      changes: rewire([["claw", "volume.case"]], []),
      expected: { lugs: ["claw"], settings: [], severity: "warning" },
    },
  ],
  "strings-hot": [
    {
      wrong: "the claw's wire is on the volume's wiper",
      guard: threeSingles,
      changes: rewire([["claw", "volume.case"]], [["claw", "volume.2"]]),
      expected: { lugs: ["claw", "volume.2", "jack.tip"], settings: [], severity: "fault" },
    },
  ],
  "strings-not-shown": [
    {
      wrong: "no claw at all",
      guard: { parts: { bridge: single(), jack: { kind: "jack" } }, wires: [] },
      changes: {
        add: [
          ["bridge.hot", "jack.tip"],
          ["bridge.ground", "jack.sleeve"],
        ],
      },
      expected: { severity: "note" },
    },
  ],
  "shield-floating": [
    {
      wrong: "a cover's wire is off",
      guard: twoHumbuckers,
      changes: rewire([["neck.shield", "tone.case"]], []),
      expected: { lugs: ["neck.shield"], settings: [], severity: "warning" },
    },
    {
      wrong: "a foil's wire is off",
      guard: twoHumbuckers,
      changes: { parts: { foil: { kind: "terminal", role: "shield" } } },
      expected: { lugs: ["foil"] },
    },
  ],
  "shield-hot": [
    {
      wrong: "leads swapped with the baseplate still tied to one",
      guard: threeSingles,
      changes: {
        change: { bridge: { metal: "baseplate" } },
        ...rewire(
          [
            ["bridge.hot", "lever.A1"],
            ["bridge.ground", "volume.case"],
          ],
          [
            ["bridge.ground", "lever.A1"],
            ["bridge.hot", "volume.case"],
            ["bridge.shield", "bridge.ground"],
          ],
        ),
      },
      expected: { lugs: ["bridge.shield", "bridge.ground", "lever.A1"], settings: [], severity: "fault" },
    },
  ],
  "pair-out-of-phase": [
    {
      wrong: "the bridge's leads swapped: position 2",
      guard: threeSingles,
      changes: rewire(
        [
          ["bridge.hot", "lever.A1"],
          ["bridge.ground", "volume.case"],
        ],
        [
          ["bridge.ground", "lever.A1"],
          ["bridge.hot", "volume.case"],
        ],
      ),
      expected: { lugs: ["bridge.ground", "bridge.hot"], settings: [{ lever: 2 }], severity: "warning" },
    },
    {
      wrong: "the middle's leads swapped: positions 2 and 4",
      guard: threeSingles,
      changes: rewire(
        [
          ["middle.hot", "lever.A2"],
          ["middle.ground", "volume.case"],
        ],
        [
          ["middle.ground", "lever.A2"],
          ["middle.hot", "volume.case"],
        ],
      ),
      expected: { lugs: ["middle.ground", "middle.hot"], settings: [{ lever: 2 }, { lever: 4 }] },
    },
  ],
  "coils-out-of-phase": [
    {
      wrong: "one coil of the neck turned round",
      guard: twoHumbuckers,
      changes: rewire(
        [
          ["neck.slug.start", "neck.screw.finish"],
          ["neck.screw.start", "tone.case"],
        ],
        [
          ["neck.slug.start", "neck.screw.start"],
          ["neck.screw.finish", "tone.case"],
        ],
      ),
      expected: { settings: [{ toggle: 2 }, { toggle: 3 }], severity: "fault" },
    },
  ],
  "hum-not-cancelling": [
    {
      wrong: "both coils of the bridge have the same pole up",
      guard: twoHumbuckers,
      changes: { parts: { bridge: humbucker({ metal: "cover" }, { winding: "forward", magnet: "north" }) } },
      expected: { settings: [{ toggle: 1 }, { toggle: 2 }], severity: "warning" },
    },
  ],
  "volume-backwards": [
    {
      wrong: "the volume's outer lugs exchanged",
      guard: threeSingles,
      changes: rewire(
        [
          ["lever.A0", "volume.3"],
          ["volume.1", "volume.case"],
        ],
        [
          ["lever.A0", "volume.1"],
          ["volume.3", "volume.case"],
        ],
      ),
      expected: { lugs: ["volume.1", "volume.2", "volume.3"], settings: [], severity: "fault" },
    },
  ],
  "tone-backwards": [
    {
      wrong: "the cap on the wrong outer lug",
      guard: splitHumbucker,
      changes: rewire([["tone.1", "cap.a"]], [["tone.3", "cap.a"]]),
      expected: { lugs: ["tone.1", "tone.2", "tone.3"], severity: "warning" },
    },
  ],
  "volume-never-silent": [
    {
      wrong: "the volume's bent lug is not soldered",
      guard: splitHumbucker,
      changes: rewire([["volume.1", "volume.case"]], []),
      expected: { lugs: ["volume.1", "volume.2", "volume.3"], severity: "warning" },
    },
  ],
  "volumes-mute-each-other": [
    {
      wrong: "two volumes before the switch",
      guard: twoHumbuckers,
      changes: {},
      expected: { settings: [{ toggle: 2 }], severity: "note" },
    },
  ],
  "unused-lug-touches": [
    {
      wrong: "the tone's free lug bent onto the case",
      guard: splitHumbucker,
      changes: rewire([], [["tone.3", "tone.case"]]),
      expected: { lugs: ["tone.3"], severity: "fault" },
    },
    {
      wrong: "the tone's free lug touches its other outer lug",
      guard: splitHumbucker,
      changes: rewire([], [["tone.3", "tone.1"]]),
      expected: { lugs: ["tone.1", "tone.3"] },
    },
  ],
  "cap-value-unusual": [
    {
      wrong: "0.47 µF for a tone cap",
      guard: threeSingles,
      changes: { change: { cap: { capacitance: "0.47uF" } } },
      expected: { lugs: ["cap.a", "cap.b"], severity: "warning" },
    },
    {
      wrong: "22 pF for 22 nF",
      guard: threeSingles,
      changes: { change: { cap: { capacitance: "22p" } } },
      expected: { lugs: ["cap.a", "cap.b"] },
    },
    {
      wrong: "22 nF for a treble bleed",
      guard: threeSingles,
      changes: {
        parts: { bleed: { kind: "cap", capacitance: "22n" } },
        add: [
          ["bleed.a", "volume.3"],
          ["bleed.b", "volume.2"],
        ],
      },
      expected: { lugs: ["bleed.a", "bleed.b"] },
    },
  ],
  "two-ground-paths": [
    {
      wrong: "a second ground wire between two cases by way of a third",
      guard: threeSingles,
      changes: rewire([], [["tone1.case", "tone2.case"]]),
      expected: { severity: "note", settings: [] },
    },
  ],
  "audit-limited": [
    {
      wrong: "more switches than combinations can be tried",
      guard: threeSingles,
      changes: { parts: Object.fromEntries("abcde".split("").map((name) => [name, { kind: "switch", type: "spdt" }])) },
      expected: { severity: "note", settings: [] },
    },
  ],
  "load-unusual": [
    {
      wrong: "humbuckers on 100k pots",
      guard: twoHumbuckers,
      changes: {
        change: { volumeB: { resistance: "100k" }, volumeN: { resistance: "100k" }, tone: { resistance: "100k" } },
      },
      expected: { settings: [{ toggle: 1 }], severity: "note" },
    },
  ],
};

const firing = Object.entries(WRONG_BUILDS).flatMap(([code, builds]) =>
  builds.map((build): [string, string, WrongBuild] => [code, build.wrong, build]),
);

describe("every code fires on a guard wired wrongly for it", () => {
  test.each(firing)("%s: %s", (code, _, { guard, changes, expected }) => {
    const found = auditBuild(buildOf(guard, changes)).filter((finding) => finding.code === code);
    expect(found.length).toBeGreaterThan(0);
    expect(found[0]).toMatchObject(expected);
    expect(found[0]!.message).not.toBe("");
    expect(found[0]!.remedy).not.toBe("");
  });
});

describe("a well-wired guard", () => {
  test.each(Object.entries(WELL_WIRED))("%s has no finding above a note", (_, guard) => {
    expect(auditBuild(buildOf(guard)).filter(({ severity }) => severity !== "note")).toEqual([]);
  });

  const silentCodes = (Object.keys(FINDING_CODES) as FindingCode[]).flatMap((code) =>
    Object.entries(WELL_WIRED)
      .filter(
        ([, guard]) =>
          !WRONG_BUILDS[code].some((wrong) => wrong.guard === guard && Object.keys(wrong.changes).length === 0),
      )
      .map(([name, guard]): [FindingCode, string, Guard] => [code, name, guard]),
  );
  test.each(silentCodes)("gives no %s on %s", (code, _, guard) => {
    expect(auditBuild(buildOf(guard)).map((finding) => finding.code)).not.toContain(code);
  });
});

describe("the table of codes", () => {
  test("every code has a title and a meaning, and a name of plain words", () => {
    for (const [code, { title, meaning, severity }] of Object.entries(FINDING_CODES)) {
      expect(code).toMatch(/^[a-z]+(-[a-z]+)+$/);
      expect(title.length).toBeGreaterThan(10);
      expect(meaning.length).toBeGreaterThan(20);
      expect(["fault", "warning", "note"]).toContain(severity);
    }
  });
});

describe("one fault is told once", () => {
  const codesAboveNote = (guard: Guard, changes: Changes) =>
    auditBuild(buildOf(guard, changes))
      .filter(({ severity }) => severity !== "note")
      .map(({ code }) => code);

  test.each([
    ["hot-shorted", 0, ["hot-shorted"]],
    ["hot-shorted", 1, ["hot-shorted", "pickup-silent"]],
    ["jack-swapped", 0, ["jack-swapped"]],
    ["coils-out-of-phase", 0, ["coils-out-of-phase"]],
    ["volume-backwards", 0, ["volume-backwards"]],
    ["unused-lug-touches", 0, ["unused-lug-touches"]],
  ] as const)("%s, build %i", (code, index, expected) => {
    const { guard, changes } = WRONG_BUILDS[code][index]!;
    expect(codesAboveNote(guard, changes)).toEqual(expected);
  });

  test("pots that are wired wrongly are not said to load the pickups", () => {
    const { guard, changes } = WRONG_BUILDS["volume-backwards"][0]!;
    expect(auditBuild(buildOf(guard, changes)).map(({ code }) => code)).not.toContain("load-unusual");
  });
});
