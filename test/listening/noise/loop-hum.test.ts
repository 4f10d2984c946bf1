import { describe, expect, it } from "vitest";
import { readBuild } from "../../../src/build-file/read-build.ts";
import { Controls } from "../../../src/build-file/settings.ts";
import { AS_DRAWN, Guitar } from "../../../src/listening/noise/guitar.ts";
import type { HumLine } from "../../../src/listening/noise/hum-at-jack.ts";
import { sweptArea } from "../../../src/listening/noise/path.ts";
import { roomLines, USUAL_ROOM } from "../../../src/listening/noise/room.ts";
import { threeSingles } from "../../fixtures/circuits.ts";

const ROOM = { mainsHz: 50, room: USUAL_ROOM } as const;
const WIDTH = 0.1025;
const HEIGHT = 0.08;

/** A pickup of next to no resistance wired to the jack round a rectangle, `over` metres along and across the guard. */
function rectangle(over = { x: 0, y: 0 }, isMirrored = false) {
  const at = (x: number, y: number) => ({ x: over.x + x, y: over.y + y });
  const coil = { resistance: 1, inductance: 1e-6, capacitance: 0 };
  const [hotEnd, groundEnd] = isMirrored ? ["ground", "hot"] : ["hot", "ground"];
  return readBuild({
    presolder: 1,
    parts: {
      // Its leads leave it 35 mm above its middle, 5 mm apart.
      pickup: { kind: "pickup", coils: { coil }, place: at(WIDTH - 0.0025, HEIGHT - 0.035) },
      top: { kind: "terminal", place: at(0, HEIGHT) },
      side: { kind: "terminal", place: at(WIDTH, 0) },
      jack: { kind: "jack", place: at(0, 0) },
    },
    wires: [
      [`pickup.${hotEnd}`, hotEnd === "hot" ? "top" : "side"],
      [hotEnd === "hot" ? "top" : "side", "jack.tip"],
      [`pickup.${groundEnd}`, groundEnd === "ground" ? "side" : "top"],
      [groundEnd === "ground" ? "side" : "top", "jack.sleeve"],
    ],
    load: { resistance: 1e9 },
  });
}

const hum = (build: ReturnType<typeof readBuild>, laid = AS_DRAWN): HumLine[] =>
  new Guitar(build, laid).humIn(new Controls(build).atRest, ROOM);
const size = ([re, im]: readonly [number, number]) => Math.hypot(re, im);

describe("a loop of wire in the room's field", () => {
  it("gives what Faraday's law says of a rectangle, 2πf·B·width·height, at every harmonic", () => {
    const lines = roomLines(50, USUAL_ROOM);
    for (const [index, { hz, loops }] of hum(rectangle()).entries()) {
      const expected = 2 * Math.PI * hz * lines[index]!.fluxDensity * WIDTH * HEIGHT;
      expect(size(loops) / expected).toBeCloseTo(1, 6);
    }
  });

  it("gives the same wherever the guard lies", () => {
    const [here, there] = [hum(rectangle()), hum(rectangle({ x: 0.7, y: -1.3 }))];
    for (const [index, { loops }] of here.entries()) expect(size(there[index]!.loops) / size(loops)).toBeCloseTo(1, 9);
  });

  it("is counted with the sign of its turn", () => {
    expect(
      sweptArea([
        { x: 0, y: 0 },
        { x: 2, y: 0 },
        { x: 2, y: 3 },
        { x: 0, y: 3 },
        { x: 0, y: 0 },
      ]),
    ).toBe(6);
    expect(
      sweptArea([
        { x: 0, y: 0 },
        { x: 0, y: 3 },
        { x: 2, y: 3 },
        { x: 2, y: 0 },
        { x: 0, y: 0 },
      ]),
    ).toBe(-6);
  });

  it("is closed by a second ground wire, shared by the two as their lengths", () => {
    const build = rectangle();
    const plain = hum(build);
    // A second wire from the pickup's ground to the sleeve, along the other two sides.
    const more = readBuild({
      ...(build as object),
      wires: [...build.wires, ["pickup.ground", "corner"], ["corner", "jack.sleeve"]],
      parts: { ...build.parts, corner: { kind: "terminal", place: { x: 0, y: HEIGHT } } },
    });
    // Both ways are as long, so that half of what they enclose is left between them.
    const ratio = size(hum(more)[0]!.loops) / size(plain[0]!.loops);
    expect(ratio).toBeCloseTo(0.5, 2);
  });
});

describe("a guard whose wires are twisted", () => {
  it("has its pickup's and its jack's pairs enclose less", () => {
    const build = readBuild(threeSingles());
    const [open, twisted] = [false, true].map((isTwisted) => hum(build, { ...AS_DRAWN, isTwisted })[0]!.loops);
    expect(size(twisted!)).toBeLessThan(size(open!));
  });

  it("encloses next to nothing where both wires go all the way together", () => {
    const build = readBuild({
      ...(rectangle() as object),
      wires: [
        ["pickup.hot", "jack.tip"],
        ["pickup.ground", "jack.sleeve"],
      ],
    });
    const twisted = hum(build, { ...AS_DRAWN, isTwisted: true })[0]!;
    // From lead to lead of the pickup is all that is left open: none, as they follow one line.
    const area = size(twisted.loops) / (2 * Math.PI * 50 * USUAL_ROOM.fluxDensity);
    expect(area).toBeLessThan(1e-5);
  });
});
