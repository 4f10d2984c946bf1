/** A build file in either form. */
export const BUILDS = {
  plan: {
    presolder: 1,
    title: "HSS",
    plan: {
      layout: "lever-5-two-tone",
      pickups: { neck: "single-vintage", middle: "single-vintage-rwrp", bridge: "humbucker-medium" },
      volume: "250k",
      tones: [
        { pot: "250k", cap: "22n", pickups: ["neck", "middle"] },
        { pot: "250k", cap: "22n", pickups: ["bridge"] },
      ],
    },
  },
  long: {
    presolder: 1,
    title: "One knob",
    parts: {
      neck: { kind: "pickup", coils: { coil: { resistance: "6k", inductance: "2.5H", capacitance: "110p" } } },
      tone: { kind: "pot", role: "tone", resistance: "300k", taper: "audio" },
      cap: { kind: "cap", label: "Folk cap", capacitance: "0.047 uF" },
      jack: { kind: "jack" },
    },
    wires: [
      ["neck.hot", "jack.tip"],
      ["neck.ground", "jack.sleeve"],
      ["neck.hot", "tone.3"],
      ["tone.2", "cap.a"],
      ["cap.b", "jack.sleeve"],
    ],
  },
} as const;
