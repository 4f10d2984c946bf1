import { describe, expect, test } from "vitest";
import { Controls, parseSettings, type RawSettings } from "../../../src/build-file/settings.ts";
import { describeSetting } from "../../../src/response/labels/setting-describer.ts";
import {
  buildOf,
  type Changes,
  type Guard,
  humbucker,
  REVERSED,
  single,
  splitHumbucker,
  threeSingles,
  twoHumbuckers,
} from "../../bench/audit/guards.ts";

function described(guard: Guard, raw: RawSettings = {}, changes: Changes = {}) {
  const build = buildOf(guard, changes);
  return describeSetting(build, parseSettings(new Controls(build), raw));
}

const label = (...args: Parameters<typeof described>) => described(...args).label;

const jack = { kind: "jack" };

/** Pickups wired straight to the jack. */
const bare = (pickups: Record<string, object>, wires: readonly (readonly [string, string])[]): Guard => ({
  parts: { ...pickups, jack },
  wires,
});

describe("the label of a setting, found from the wiring", () => {
  test.each([
    [1, "bridge"],
    [2, "bridge + middle, parallel, in phase, hum cancelling"],
    [3, "middle"],
    [4, "middle + neck, parallel, in phase, hum cancelling"],
    [5, "neck"],
  ])("three single coils in position %i", (lever, expected) => {
    expect(label(threeSingles, { lever })).toBe(expected);
  });

  test("a middle pickup wound like its neighbours adds its hum to theirs", () => {
    const changes = { change: { middle: single({ distance: "0.1m" }) } };
    expect(label(threeSingles, { lever: 2 }, changes)).toBe("bridge + middle, parallel, in phase, not hum cancelling");
  });

  test("opposite magnets alone put a pair out of phase", () => {
    const changes = { change: { middle: single({ distance: "0.1m", magnet: "south" }) } };
    expect(label(threeSingles, { lever: 2 }, changes)).toBe(
      "bridge + middle, parallel, out of phase, not hum cancelling",
    );
  });

  test("two humbuckers are two names, and one humbucker is just its name", () => {
    expect(label(twoHumbuckers, { toggle: 1 })).toBe("bridge");
    expect(label(twoHumbuckers, { toggle: 2 })).toBe("bridge + neck, parallel, in phase, hum cancelling");
  });

  test("a push-pull that joins one coil's ends leaves the other", () => {
    expect(label(splitHumbucker)).toBe("bridge");
    expect(label(splitHumbucker, { "tone.s": "up" })).toBe("bridge (screw coil)");
  });

  test("dials do not change what the switch selects, except where they alone decide", () => {
    expect(label(threeSingles, { lever: 2, volume: 0, tone: 0 })).toContain("bridge + middle");
    const backwards = {
      add: [
        ["lever.A0", "volume.1"],
        ["volume.3", "volume.case"],
      ],
      remove: [
        ["lever.A0", "volume.3"],
        ["volume.1", "volume.case"],
      ],
    } as const;
    expect(label(threeSingles, { lever: 1, volume: 10 }, backwards)).toBe("silent");
    expect(label(threeSingles, { lever: 1, volume: 4 }, backwards)).toBe("bridge");
  });

  test("a position that reaches no pickup is silent", () => {
    const changes = { remove: [["middle.hot", "lever.A2"]] } as const;
    const middle = described(threeSingles, { lever: 3 }, changes);
    expect(middle).toMatchObject({ label: "silent", relation: "silent", phase: null, hum: null, coils: [] });
    expect(label(threeSingles, { lever: 2 }, changes)).toBe("bridge");
  });

  test("coils of one humbucker in parallel, out of phase, or failing to cancel hum, say so", () => {
    const parallel = bare({ bridge: humbucker() }, [
      ["bridge.slug.finish", "jack.tip"],
      ["bridge.screw.finish", "jack.tip"],
      ["bridge.slug.start", "jack.sleeve"],
      ["bridge.screw.start", "jack.sleeve"],
    ]);
    expect(label(parallel)).toBe("bridge, coils in parallel");
    const reversed = bare({ bridge: humbucker() }, [
      ["bridge.slug.finish", "jack.tip"],
      ["bridge.slug.start", "bridge.screw.start"],
      ["bridge.screw.finish", "jack.sleeve"],
    ]);
    expect(label(reversed)).toBe("bridge, coils out of phase, not hum cancelling");
  });

  const three = { bridge: single(), middle: single(REVERSED), neck: single() };

  test("pickups end to end are in series, and a pickup beside such a pair is named beside the pair", () => {
    const series = bare(three, [
      ["bridge.hot", "jack.tip"],
      ["bridge.ground", "middle.hot"],
      ["middle.ground", "jack.sleeve"],
    ]);
    expect(described(series)).toMatchObject({
      label: "bridge + middle, series, in phase, hum cancelling",
      relation: "series",
    });
    const mixed = bare(three, [...series.wires, ["neck.hot", "jack.tip"], ["neck.ground", "jack.sleeve"]]);
    expect(described(mixed)).toMatchObject({
      label: "(bridge + middle in series) + neck, parallel, in phase, hum partly cancelling",
      relation: "series-parallel",
    });
  });

  test("two parallel pairs in series are told from two series pairs in parallel", () => {
    const four = { a: single(), b: single(), c: single(), d: single() };
    const pairsInSeries = bare(four, [
      ["a.hot", "jack.tip"],
      ["b.hot", "jack.tip"],
      ["a.ground", "b.ground"],
      ["b.ground", "c.hot"],
      ["c.hot", "d.hot"],
      ["c.ground", "jack.sleeve"],
      ["d.ground", "jack.sleeve"],
    ]);
    expect(label(pairsInSeries)).toContain("(a + b in parallel) + (c + d in parallel), series");
    const pairsInParallel = bare(four, [
      ["a.hot", "jack.tip"],
      ["a.ground", "b.hot"],
      ["b.ground", "jack.sleeve"],
      ["c.hot", "jack.tip"],
      ["c.ground", "d.hot"],
      ["d.ground", "jack.sleeve"],
    ]);
    expect(label(pairsInParallel)).toContain("(a + b in series) + (c + d in series), parallel");
  });

  test("one coil of each of two humbuckers, in series or in parallel, names the coils", () => {
    const pickups = { bridge: humbucker(), neck: humbucker() };
    const series = bare(pickups, [
      ["bridge.slug.finish", "jack.tip"],
      ["bridge.slug.start", "neck.screw.finish"],
      ["neck.screw.start", "jack.sleeve"],
    ]);
    expect(label(series)).toBe("bridge (slug coil) + neck (screw coil), series, in phase, hum cancelling");
    const parallel = bare(pickups, [
      ["bridge.slug.finish", "jack.tip"],
      ["bridge.slug.start", "jack.sleeve"],
      ["neck.screw.finish", "jack.tip"],
      ["neck.screw.start", "jack.sleeve"],
    ]);
    expect(label(parallel)).toBe("bridge (slug coil) + neck (screw coil), parallel, in phase, hum cancelling");
  });

  test("of three pickups the odd one out is named", () => {
    const odd = bare({ ...three, middle: single({ magnet: "south" }) }, [
      ["bridge.hot", "jack.tip"],
      ["middle.hot", "jack.tip"],
      ["neck.hot", "jack.tip"],
      ["bridge.ground", "jack.sleeve"],
      ["middle.ground", "jack.sleeve"],
      ["neck.ground", "jack.sleeve"],
    ]);
    expect(label(odd)).toBe("bridge + middle + neck, parallel, middle out of phase, not hum cancelling");
  });

  test("a weak lower coil of opposite sign, as in a stack, is not called out of phase", () => {
    const stack = {
      kind: "pickup",
      conductors: 2,
      coils: {
        upper: { resistance: "4k", inductance: "2H" },
        lower: { resistance: "4k", inductance: "2H", output: 0.2 },
      },
    };
    const build = bare({ bridge: stack }, [
      ["bridge.hot", "jack.tip"],
      ["bridge.ground", "jack.sleeve"],
    ]);
    expect(described(build)).toMatchObject({ label: "bridge", phase: "in phase", hum: "cancelling" });
  });

  test("swapping which end of a coil is called the start, with its winding named the other way, changes nothing", () => {
    const renamed = bare({ ...three, bridge: single({ winding: "reverse" }) }, [
      ["bridge.ground", "jack.tip"],
      ["middle.hot", "jack.tip"],
      ["bridge.hot", "jack.sleeve"],
      ["middle.ground", "jack.sleeve"],
    ]);
    expect(label(renamed)).toBe("bridge + middle, parallel, in phase, hum cancelling");
  });

  test("where coils stand along the string changes the order of the names and nothing else", () => {
    const placed = (name: string, slug: string, screw: string) => ({
      parts: {
        [name]: {
          ...humbucker(),
          coils: {
            slug: { resistance: "4k", inductance: "2.2H", distance: slug },
            screw: { resistance: "4k", inductance: "2.2H", ...REVERSED, distance: screw },
          },
        },
      },
    });
    const near = placed("bridge", "0.05m", "0.032m");
    const far = placed("neck", "0.14m", "0.158m");
    const changes = { parts: { ...near.parts, ...far.parts } };
    expect(label(twoHumbuckers, { toggle: 2 }, changes)).toBe("bridge + neck, parallel, in phase, hum cancelling");
    expect(label(twoHumbuckers, { toggle: 1 }, changes)).toBe("bridge");
    expect(label(twoHumbuckers, { toggle: 3 }, changes)).toBe("neck");
  });

  test("a coil's end with a resistor across its sister is split in part, and both coils still sound", () => {
    const changes = {
      parts: { part: { kind: "resistor", resistance: "4.7k" } },
      remove: [["tone.s.A2", "volume.3"]],
      add: [
        ["tone.s.A2", "part.a"],
        ["part.b", "volume.3"],
      ],
    } as const;
    expect(label(splitHumbucker, { "tone.s": "up" }, changes)).toMatch(/^bridge/);
    expect(described(splitHumbucker, { "tone.s": "up" }, changes).coils).toHaveLength(2);
  });
});
