import { expect, test } from "vitest";
import { readBuild } from "../../../src/build-file/read-build.ts";
import { rewire } from "../../../src/build-file/rewire/rewire.ts";

const coil = { resistance: "6k", inductance: "2.4H", capacitance: "110p" };
const single = { kind: "pickup", coils: { coil } };
const humbucker = {
  kind: "pickup",
  coils: { slug: { ...coil, magnet: "north" }, screw: { ...coil, magnet: "south" } },
};
const lever = { kind: "switch", type: "lever-3" };
const jack = { kind: "jack" };

const guard = (parts: object, wires: unknown[]) => readBuild({ presolder: 1, parts: { jack, ...parts }, wires });
const textsOf = (steps: readonly { text: string }[]) => steps.map(({ text }) => text);

const SINGLES = guard({ neck: single, bridge: single, lever }, [
  ["neck.hot", "lever.A3"],
  ["bridge.hot", "lever.A1"],
  ["lever.A0", "jack.tip"],
]);

test("a lug that the pickups give its name is told by what it was as well, there and home", () => {
  const { steps, home } = rewire(
    SINGLES,
    guard({ neck: single, bridge: single, lever }, [
      ["neck.hot", "lever.A1"],
      ["bridge.hot", "lever.A3"],
      ["lever.A0", "jack.tip"],
    ]),
  );
  expect(textsOf(steps)).toContain(
    "Open the joint at the lever, lug of the neck pickup, first side: the hot lead of the neck single coil moves to the lever, lug of the neck pickup, first side (as found: lug of the bridge pickup, first side).",
  );
  expect(textsOf(steps)).toContain(
    "Solder to the lever, lug of the bridge pickup, first side (as found: lug of the neck pickup, first side): the hot lead of the bridge single coil, until now at the lever, lug of the bridge pickup, first side.",
  );
  expect(textsOf(home).filter((text) => text.includes("(as wanted: "))).toHaveLength(4);
});

test("a lead is told by its end and its coil, and machine fields stay codes", () => {
  const { steps } = rewire(
    SINGLES,
    guard({ neck: single, bridge: humbucker, lever }, [
      ["neck.hot", "lever.A3"],
      ["bridge.slug.finish", "lever.A1"],
      ["lever.A0", "jack.tip"],
    ]),
  );
  expect(steps.map(({ at, text }) => [at, text])).toEqual([
    [
      "lever.A1",
      "Open the joint at the lever, lug of the bridge pickup, first side: the hot lead of the bridge single coil goes out with its part.",
    ],
    [
      "lever.A1",
      "Solder to the lever, lug of the bridge pickup, first side: the finish lead of the slug coil (north) of the bridge humbucker, which comes in with its part.",
    ],
  ]);
});

test("a part that is called otherwise in the other guard is told by both its names, one exchanged as the old and the new", () => {
  const pot = (resistance: string) => ({ kind: "pot", resistance });
  const renamed = rewire(
    guard({ vol: pot("250k") }, [["vol.2", "jack.tip"]]),
    guard({ master: pot("250k") }, [["master.3", "jack.tip"]]),
  );
  expect(textsOf(renamed.steps)[1]).toMatch(
    /^Solder to the master, lug 3 \(clockwise end\) \(as found: vol, lug 3 \(clockwise end\)\): /,
  );
  const exchanged = rewire(
    guard({ vol: pot("250k") }, [["vol.2", "jack.tip"]]),
    guard({ vol: pot("500k") }, [["vol.2", "jack.tip"]]),
  );
  expect(textsOf(exchanged.steps)).toEqual([
    "Open the joint at the old vol, lug 2 (wiper): this end of the wire moves to the new vol, lug 2 (wiper); the other stays on the jack, tip.",
    "Solder to the new vol, lug 2 (wiper): the wire from the jack, tip, until now at the old vol, lug 2 (wiper).",
  ]);
});

test("a wire that is taken out is closed off by a comma from what is said of it", () => {
  const pot = { kind: "pot", resistance: "250k" };
  const wires = [["vol.case", "jack.sleeve"]];
  const { steps } = rewire(guard({ vol: pot }, [["vol.2", "jack.tip"], ...wires]), guard({ vol: pot }, wires));
  expect(textsOf(steps)[0]).toBe(
    "Open the joint at the jack, tip: the wire from the vol, lug 2 (wiper), is taken out.",
  );
});
