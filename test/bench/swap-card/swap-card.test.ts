import { describe, expect, test } from "vitest";
import type { DriveOf } from "../../../src/bench/swap-card/sounds.ts";
import { type SwapRequest, swapCard } from "../../../src/bench/swap-card/swap-card.ts";
import type { PlanInput } from "../../../src/build-file/plans/plan-schema.ts";
import { PLAN_PRESETS } from "../../../src/build-file/plans/presets.ts";
import { readBuild } from "../../../src/build-file/read-build.ts";
import { Controls, parseSettings } from "../../../src/build-file/settings.ts";
import { flatDrive } from "../../../src/choice/drive.ts";
import { Guard } from "../../../src/choice/guard.ts";
import { kPowerGain } from "../../../src/choice/slices.ts";
import { pluckedDrive } from "../../../src/server/jobs/sound/plucked-drive.ts";
import { onePickup } from "../../fixtures/circuits.ts";

const SOLDERED = { jack: "solder", claw: "solder", shield: "solder", other: "solder" } as const;
const PLUGGED = { jack: "plug", claw: "plug", shield: "plug", other: "plug" } as const;
const CABLE = { cable: { length: "3m", capacitance: "100p" } };

const preset = (id: string) => PLAN_PRESETS.find((each) => each.id === id)!.plan;
const guard = (plan: PlanInput, title = "a guard") => readBuild({ presolder: 1, title, plan, ...CABLE });

const request = (more: Partial<SwapRequest> = {}): SwapRequest => ({
  how: SOLDERED,
  temperature: 20,
  noted: {},
  heights: {},
  heightsOut: {},
  ...more,
});

const card = (out: PlanInput, into: PlanInput, more: Partial<SwapRequest> = {}, driveOf: DriveOf = pluckedDrive) =>
  swapCard(guard(out, "the old"), guard(into, "the new"), request(more), driveOf);

/** Where no sound is weighed: a phrase takes longest of all. */
const unheard = (out: PlanInput, into: PlanInput, more: Partial<SwapRequest> = {}) =>
  card(out, into, more, () => flatDrive());

describe("where the old guard's sounds are on the new one", () => {
  test("a guard for itself: every position is where it was, as loud, and nothing is new", () => {
    const { player, fresh, volume, switches } = card(preset("singles-series"), preset("singles-series"));
    for (const { position, nearest, distanceDb, audible, loudnessLu } of player) {
      expect([nearest, audible]).toEqual([position, "none"]);
      expect(distanceDb).toBeCloseTo(0, 9);
      expect(loudnessLu).toBeCloseTo(0, 9);
    }
    expect(fresh).toEqual([]);
    expect(volume).toMatchObject([
      {
        positions: [1, 2, 3, 4, 5],
        text: "The volume falls as before. Turned down to 6 it keeps its treble as before.",
      },
    ]);
    expect(switches).toEqual(["Lower tone up does what it did."]);
  });

  test("neck and bridge in each other's place: position 1 is position 5, and 2 is 4", () => {
    // Level with the strings: a bridge pickup is drawn slanted unless it says so.
    const at = (type: string, distance: string) => ({ type, distance, coils: { coil: { slant: 0 } } });
    const plan = (bridge: object, neck: object): PlanInput => ({
      ...preset("singles-no-tone"),
      pickups: { bridge, neck, middle: at("single-vintage-rwrp", "0.1m") } as PlanInput["pickups"],
    });
    const [near, far] = [at("single-hot", "0.045m"), at("single-vintage", "0.16m")];
    const { player } = card(plan(near, far), plan(far, near));
    expect(player.map(({ position, nearest }) => `${position}→${nearest}`)).toEqual([
      "1→5",
      "2→4",
      "3→3",
      "4→2",
      "5→1",
    ]);
    for (const { distanceDb, loudnessLu } of player) {
      expect(distanceDb).toBeCloseTo(0, 6);
      expect(loudnessLu).toBeCloseTo(0, 6);
    }
  });

  test("twice the EMF in the same coils is the same sound, 6.02 dB louder", () => {
    const strong = (type: string, output: number) => ({ type, coils: { coil: { output } } });
    const plan: PlanInput = {
      ...preset("singles-no-tone"),
      pickups: {
        bridge: strong("single-medium", 2.2),
        middle: strong("single-vintage-rwrp", 2),
        neck: strong("single-vintage", 2),
      },
    };
    for (const { nearest, position, loudnessLu, text } of card(preset("singles-no-tone"), plan).player) {
      expect(nearest).toBe(position);
      expect(loudnessLu).toBeCloseTo(20 * Math.log10(2), 6);
      expect(text).toContain("the same sound to the ear; 6.0 dB louder.");
    }
  });

  test("levels are the curve's, weighed over the ear's bands by hand", () => {
    const builds = [
      onePickup(),
      onePickup({
        pickup: {
          kind: "pickup",
          coils: { coil: { resistance: "8k", inductance: "4.5H", capacitance: "90p", output: 1.4 } },
        },
      }),
    ].map((each) => readBuild(each));
    const [from, to] = builds as [(typeof builds)[0], (typeof builds)[0]];
    const { player } = swapCard(from, to, request(), () => flatDrive());
    // 4000 points spaced as ERB numbers are, 21.366·log10(0.004368·f + 1), K-weighted, straight from the transfer function.
    const cam = (hz: number) => 21.366 * Math.log10(0.004368 * hz + 1);
    const [low, high] = [cam(50), cam(16_000)];
    const points = Float64Array.from(
      { length: 4000 },
      (_, k) => (10 ** ((low + ((k + 0.5) / 4000) * (high - low)) / 21.366) - 1) / 0.004368,
    );
    const weight = points.map(kPowerGain);
    const level = (build: (typeof builds)[0]) => {
      const of = new Guard(build);
      const { re, im } = of.transfers(parseSettings(new Controls(build))).total(points);
      return 10 * Math.log10(weight.reduce((sum, gain, k) => sum + gain * (re[k]! ** 2 + im[k]! ** 2), 0));
    };
    expect(player[0]!.loudnessLu).toBeCloseTo(level(to) - level(from), 1);
  });

  test("a sound that nothing comes near is gone, and one that there was not is new", () => {
    const { player, fresh, humFree, switches } = card(preset("singles-neck-middle"), preset("hsh-push-pull-splits"));
    expect(player[4]!.text).toMatch(/^Position 5 \(neck\)/);
    expect(fresh.map(({ position }) => position)).toContain("1");
    expect(humFree.before).toEqual(["2", "4"]);
    expect(humFree.after).toEqual(expect.arrayContaining(["1", "5", "2, tone up", "4, tone up"]));
    expect(switches.join()).toMatch(/^New: tone up\./);
  });

  test("a switch that the new guard has not is told to be gone, and what it made", () => {
    const { switches } = unheard(preset("singles-series"), preset("singles-neck-middle"));
    expect(switches).toHaveLength(1);
    expect(switches[0]).toMatch(/^Gone: lower tone up\. The new guard has no such switch; it made position \d /);
    expect(switches[0]).not.toContain("does nothing");
  });

  test("another number of positions is no fault", () => {
    const { player, tone } = card(preset("singles-neck-middle"), preset("humbuckers-two-volumes"));
    expect(player).toHaveLength(5);
    expect(tone).toHaveLength(3);
    expect(card(preset("one-p90"), preset("singles-no-tone")).player[0]!.text).toMatch(/^The only position \(/);
  });
});

describe("what the knobs do", () => {
  const track = (taper: unknown) =>
    readBuild(
      onePickup({ parts: { volume: { kind: "pot", role: "volume", resistance: "250k", taper, endResistance: 1 } } }),
    );

  test("a volume of another taper: the dial at which as much of the track is left", () => {
    const bent = [
      [0, 0],
      [0.5, 0.1],
      [1, 1],
    ];
    const { volume } = swapCard(
      track(bent),
      track([
        [0, 0],
        [1, 1],
      ]),
      request(),
      pluckedDrive,
    );
    // Above half the bent track has 0.1 + 0.9·(turn − 0.5)/0.5 of it, below half 0.2·turn; the straight one the turn itself.
    for (const { from, to } of volume[0]!.dials) {
      const turn = from / 10;
      expect(to).toBeCloseTo(10 * (turn > 0.5 ? 0.1 + 1.8 * (turn - 0.5) : 0.2 * turn), 0);
    }
  });

  test("a bleed and a no-load pot that come or go are told", () => {
    const bled = { ...preset("singles-neck-middle"), trebleBleed: { capacitance: "1n" } };
    expect(unheard(preset("singles-neck-middle"), bled).volume[0]!.text).toMatch(
      /more of its treble\. The new guard has a treble bleed/,
    );
    expect(unheard(bled, preset("singles-neck-middle")).volume[0]!.text).toMatch(
      /less of its treble\. The old guard had a treble bleed/,
    );
    expect(unheard(preset("singles-neck-middle"), preset("singles-no-load")).notes[0]).toMatch(
      /leaves the circuit at 10/,
    );
  });
});

describe("what is done to the guitar", () => {
  const plan = preset("singles-neck-middle");

  test("wires that leave the guard come off and go on, jack first; others stay", () => {
    const { stepsOut, stepsIn, stays } = unheard(plan, preset("hss-push-pull-split"));
    const named = stepsOut.map(({ title }) => title).filter((title) => title.startsWith("Comes off"));
    expect(named).toEqual([
      "Comes off: jack, tip and jack, sleeve",
      "Comes off: spring claw",
      "Comes off: shielding foil",
    ]);
    expect(stepsOut[3]!.text).toContain("The wire from the volume, lug 2 (wiper). Unsolder it at the jack, tip");
    expect(stepsIn.map(({ title }) => title).indexOf("Measure at the jack before it is closed")).toBeGreaterThan(
      stepsIn.findLastIndex(({ title }) => title.startsWith("Goes on")),
    );
    expect(stays.join()).toContain("The spring claw");
  });

  test("the first cautions come first whatever is done, the iron's only where it is used", () => {
    const soldered = unheard(plan, plan).cautions;
    const plugged = unheard(plan, plan, { how: PLUGGED }).cautions;
    for (const cautions of [soldered, plugged]) {
      expect(cautions[0]).toMatch(/^Unplug the guitar from the amplifier/);
      expect(cautions[1]).toMatch(/^Never open an amplifier/);
      expect(cautions.join()).toMatch(/springs are under tension/);
    }
    expect(soldered.join()).toContain("The iron's tip");
    expect(plugged.join()).not.toContain("iron");
    const { stepsOut, stays } = unheard(plan, plan, { how: { ...PLUGGED, jack: "along" } });
    expect(stepsOut[3]!.text).toContain("Unscrew the jack and let it come along with the guard.");
    expect(stays[0]).toMatch(/hole/);
  });

  test("heights kept of the new guard, else of the old one's place, else none", () => {
    const heights = { neck: { bass: 0.0022, treble: 0.0018 } };
    const { heights: lines } = unheard(plan, plan, { heights, heightsOut: { middle: { bass: 0.002, treble: 0.002 } } });
    expect(lines[0]).toMatch(/^Neck single coil: back to 2.2 mm on the bass side and 1.8 mm/);
    expect(lines[1]).toMatch(
      /^Middle single coil: none kept of this guard\. The old guard's pickup there stood at 2 mm/,
    );
    expect(lines[2]).toMatch(/^Bridge single coil: none kept\. Measure/);
    expect(() => unheard(plan, plan, { heightsOut: { nekc: { bass: 0.002, treble: 0.002 } } })).toThrow(
      "heightsOut.nekc",
    );
    expect(() => unheard(plan, plan, { heights: { nekc: { bass: 0.002, treble: 0.002 } } })).toThrow("heights.nekc");
  });

  test("readings are the new guard's at the plug, position by position, with what was noted before", () => {
    const { readings } = unheard(preset("hss-push-pull-split"), plan, { noted: { "jack, lever 1": "6.4k" } });
    expect(readings.map(({ where }) => where)).toEqual([1, 2, 3, 4, 5].map((position) => `Position ${position}`));
    // Medium single of 6.6 kΩ across the volume's 250 kΩ: 6.43 kΩ, ± 5 % of the coil.
    expect(readings[0]).toMatchObject({ noted: "6.4k", fits: true });
    expect(readings[0]!.should).toMatch(/^6\.0\d kΩ to 6\.7\d kΩ$/);
  });
});
