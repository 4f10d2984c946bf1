import { harness, single, splitHumbucker, threeSingles, twoHumbuckers } from "./guards.ts";
import { rewire, type WrongBuild } from "./wrong-build.ts";

/** Builds whose signal, controls, ground or metal are wired wrongly, by the code that must fire. */
export const WRONG_PATHS = {
  "no-pickup": [
    {
      wrong: "nothing to hear",
      guard: harness,
      changes: {},
      expected: { lugs: ["lever.A1", "lever.A2", "lever.A3"], severity: "note" },
    },
  ],
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
  "metal-to-part": [
    {
      wrong: "leads swapped, a cover that is drawn on ground",
      guard: threeSingles,
      changes: {
        change: { bridge: { metal: "cover" } },
        ...rewire(
          [
            ["bridge.hot", "lever.A1"],
            ["bridge.ground", "volume.case"],
          ],
          [
            ["bridge.ground", "lever.A1"],
            ["bridge.hot", "volume.case"],
            ["bridge.shield", "volume.case"],
          ],
        ),
      },
      expected: { severity: "note", lugs: ["bridge.ground", "bridge.shield"] },
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
} satisfies Record<string, readonly WrongBuild[]>;
