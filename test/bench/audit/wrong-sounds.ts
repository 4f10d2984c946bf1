import { expect } from "vitest";
import { humbucker, single, splitHumbucker, threeSingles, twoHumbuckers } from "./guards.ts";
import { rewire, type WrongBuild } from "./wrong-build.ts";

/** Builds that sound, but out of phase, humming, turned round or through unusual values, by the code that must fire. */
export const WRONG_SOUNDS = {
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
  "pot-value-unusual": (
    [
      ["500", "500 kΩ"],
      ["250", "250 kΩ"],
      ["1k", "1 MΩ"],
      ["5k", "500 kΩ"],
      ["50M", "500 kΩ"],
    ] as const
  ).map(([resistance, meant]) => ({
    wrong: `${resistance} for a volume`,
    guard: threeSingles,
    changes: { change: { volume: { resistance } } },
    expected: {
      lugs: ["volume.1", "volume.2", "volume.3"],
      severity: "warning" as const,
      message: expect.stringContaining(`Is ${meant} meant?`),
    },
  })),
  "cap-value-unusual": [
    {
      wrong: "0.47 µF for a tone cap",
      guard: threeSingles,
      changes: { change: { cap: { capacitance: "0.47uF" } } },
      expected: { lugs: ["cap.a", "cap.b"], severity: "warning", message: expect.stringContaining("Is 47 nF meant?") },
    },
    ...(
      [
        ["22p", "22 nF"],
        ["22uF", "22 nF"],
        ["470p", "47 nF"],
        ["2.2uF", "22 nF"],
      ] as const
    ).map(([capacitance, meant]) => ({
      wrong: `${capacitance} for ${meant}`,
      guard: threeSingles,
      changes: { change: { cap: { capacitance } } },
      expected: { lugs: ["cap.a", "cap.b"], message: expect.stringContaining(`Is ${meant} meant?`) },
    })),
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
  "metal-dims": [
    {
      wrong: "a small neck pickup in a closed can",
      guard: threeSingles,
      changes: { change: { neck: single({ shielding: { shelf: 2760, depth: 12.7 } }) } },
      expected: {
        severity: "note",
        settings: [],
        lugs: ["neck.ground", "neck.hot"],
        // Measured: 7.9 dB and 4.8 dB (open data set strayr/pickupAnalyseR-data, CC0).
        message: expect.stringMatching(/^The metal about neck takes 8\.\d dB .* 4 kHz and [45]\.\d dB at 2 kHz/),
      },
    },
  ],
} satisfies Record<string, readonly WrongBuild[]>;
