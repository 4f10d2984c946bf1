/** A guard that every test here may send. */
export const PLAN = {
  presolder: 1,
  plan: {
    layout: "lever-5-two-tone",
    pickups: { neck: "single-vintage", middle: "single-vintage-rwrp", bridge: "humbucker-medium" },
    volume: "250k",
    tones: [
      { pot: "250k", cap: "22n", pickups: ["neck", "middle"] },
      { pot: "250k", cap: "22n", pickups: ["bridge"] },
    ],
  },
};

/** Minutes of work for one worker. */
export const LONG_SET = {
  build: PLAN,
  signal: "sweep",
  rate: 192_000,
  sweep: { lever: [1, 2, 3, 4, 5], tone: Array.from({ length: 100 }, (_, index) => index / 10) },
};
