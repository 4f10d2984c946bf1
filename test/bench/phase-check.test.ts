import { describe, expect, it } from "vitest";
import { phaseCheck } from "../../src/bench/phase-check.ts";
import { readBuild } from "../../src/build-file/read-build.ts";
import { threeSingles } from "../fixtures/circuits.ts";
import { presetGuard } from "../fixtures/harness.ts";

type Loose = { parts: Record<string, { coils: { coil: object } }>; wires: [string, string][] };

function guard(changes: { coil?: object; pickup?: object; wires?: [string, string][] }) {
  const file = threeSingles() as Loose;
  const bridge = file.parts.bridge!;
  const coil = { ...bridge.coils.coil, ...changes.coil };
  const parts = { ...file.parts, bridge: { ...bridge, ...changes.pickup, coils: { coil } } };
  return readBuild({ ...file, parts, wires: [...file.wires, ...(changes.wires ?? [])] });
}

const swapped = (file: Loose): [string, string][] =>
  file.wires.map(([from, to]) => {
    if (from === "bridge.hot") return ["bridge.ground", to];
    return from === "bridge.ground" ? ["bridge.hot", to] : [from, to];
  });

describe("the phase check", () => {
  // String sign = winding × magnet, hum sign = winding alone.
  it.each([
    ["forward", "north", "up", 1],
    ["reverse", "south", "up", -1],
    ["forward", "south", "down", 1],
    ["reverse", "north", "down", -1],
  ])("says how a %s coil over %s kicks: %s", (winding, magnet, kick, humSign) => {
    const { pickups } = phaseCheck(guard({ coil: { winding, magnet } }));
    expect(pickups.find(({ pickup }) => pickup === "bridge")!.coils).toEqual([{ coil: "coil", kick, humSign }]);
  });

  it("finds the one pickup of three that goes against the others, and names its leads", () => {
    const file = threeSingles() as Loose;
    const build = readBuild({
      ...file,
      parts: {
        ...file.parts,
        middle: { ...file.parts.middle, coils: { coil: { resistance: 6300, inductance: 2.6 } } },
      },
      wires: swapped(file),
    });
    const { pickups } = phaseCheck(build);
    expect(pickups.map(({ pickup, kickAtJack, agrees }) => [pickup, kickAtJack, agrees])).toEqual([
      ["neck", "up", true],
      ["middle", "up", true],
      ["bridge", "down", false],
    ]);
    expect(pickups[2]!.swap).toEqual([["bridge.hot", "bridge.ground"]]);
    expect(pickups[2]!.message).toMatch(/against the others.*exchange bridge\.hot with bridge\.ground/);
  });

  it("minds a cover jumpered to the ground lead, and one that may be tied inside", () => {
    const jumpered = phaseCheck(guard({ pickup: { metal: "cover" }, wires: [["bridge.shield", "bridge.ground"]] }));
    expect(jumpered.pickups[2]!.metal).toMatch(
      /cut the jumper between the cover and bridge\.ground and run the cover to ground/,
    );
    const inside = phaseCheck(guard({ pickup: { metal: "baseplate" } }));
    expect(inside.pickups[2]!.metal).toMatch(/whether the baseplate is tied to one of its leads inside/);
    const onItsOwn = phaseCheck(guard({ pickup: { metal: "cover" }, wires: [["bridge.shield", "volume.case"]] }));
    expect(onItsOwn.pickups[2]!.metal).toBeNull();
  });

  it("exchanges the outer leads of a humbucker and leaves its splice, but for one whose splice a switch uses", () => {
    const swapOf = (id: string) =>
      phaseCheck(readBuild(presetGuard(id))).pickups.find(({ pickup }) => pickup === "bridge")!.swap;
    expect(swapOf("humbuckers-one-volume")).toEqual([["bridge.slug.finish", "bridge.screw.finish"]]);
    expect(swapOf("hss-push-pull-split")).toEqual([
      ["bridge.slug.start", "bridge.slug.finish"],
      ["bridge.screw.start", "bridge.screw.finish"],
    ]);
  });

  it("keeps a screwdriver from jumping to an open coil", () => {
    expect(phaseCheck(readBuild(presetGuard("one-p90"))).how.join(" ")).toMatch(/tape over an open coil/);
  });

  it("says where a pickup is never heard", () => {
    const file = threeSingles() as Loose;
    const build = readBuild({ ...file, wires: file.wires.filter(([from]) => from !== "bridge.hot") });
    expect(phaseCheck(build).pickups[2]).toMatchObject({ kickAtJack: null, settings: null });
  });
});
