import { expect, test } from "vitest";
import { PLAN_PRESETS } from "../../src/build-file/plans/presets.ts";
import { readBuild } from "../../src/build-file/read-build.ts";
import type { Build } from "../../src/build-file/schema.ts";
import { layGuard } from "../../src/page/drawing/laid-guard.ts";
import { rewireTold } from "../../src/page/engine/rewire-told.ts";
import { JointSpots } from "../../src/page/rewire/joint-spots.ts";
import { type Scene, sceneOf } from "../../src/page/rewire/scene.ts";
import { casesOf } from "../effort.ts";

const PRESETS = PLAN_PRESETS.map(({ id, plan }) => [id, readBuild({ presolder: 1, plan })] as const);
const PAIRS = PRESETS.flatMap(([nameA, found]) =>
  PRESETS.map(([nameB, wanted]) => ({ title: `${nameA} → ${nameB}`, found, wanted })),
);

function scenesOf(found: Build, wanted: Build): { there: Scene; home: Scene; steps: number } {
  const told = rewireTold(found, wanted);
  const [there, home] = (["there", "home"] as const).map((way) => sceneOf(found, wanted, told, way));
  return { there: there!, home: home!, steps: told.steps.length };
}

test("every joint of every rewiring is an end of one wire of its own guard, between lugs that are drawn", () => {
  for (const { title, found, wanted } of casesOf(PAIRS, 20, 120)) {
    const { there, steps } = scenesOf(found, wanted);
    const laid = layGuard(there.build, "back");
    expect(there.joints.map(({ step }) => step)).toEqual([...Array(steps).keys()]);
    for (const { step, lug, line, belongs } of there.joints) {
      const of = there.lines[line]!;
      expect([of.from, of.to], title).toContain(lug);
      expect(of.steps, title).toContain(step);
      expect(of.belongs, title).toBe(belongs);
    }
    for (const { from, to, belongs } of there.lines) {
      expect([laid.find(from)?.name, laid.find(to)?.name], title).toEqual([from, to]);
      const parts = [from, to].map((lug) => there.belongs.get(lug.split(".")[0]!));
      for (const part of parts) expect(["both", belongs], `${title}: ${from} ${to}`).toContain(part);
    }
  }
});

test("the way home is the same picture with opens and makes exchanged", () => {
  for (const { title, found, wanted } of casesOf(PAIRS, 20, 120)) {
    const { there, home, steps } = scenesOf(found, wanted);
    expect(home.build.parts, title).toEqual(there.build.parts);
    const undone = home.joints.map(({ step, do: what, lug, belongs }) => ({
      step: steps - 1 - step,
      do: what === "open" ? "make" : "open",
      lug,
      belongs,
    }));
    expect(undone.reverse(), title).toEqual(
      there.joints.map(({ step, do: what, lug, belongs }) => ({ step, do: what, lug, belongs })),
    );
  }
});

const pot = (resistance: string) => ({ kind: "pot", resistance });
const guard = (parts: object, wires: unknown[]) =>
  readBuild({ presolder: 1, parts: { jack: { kind: "jack" }, ...parts }, wires });

test("a part that is called otherwise is drawn once, by its name as wanted", () => {
  const { there } = scenesOf(
    guard({ vol: pot("250k") }, [["vol.2", "jack.tip"]]),
    guard({ master: pot("250k") }, [["master.3", "jack.tip"]]),
  );
  expect([...there.belongs]).toEqual([
    ["jack", "both"],
    ["master", "both"],
  ]);
  expect(there.joints.map((joint) => [joint.do, joint.lug])).toEqual([
    ["open", "master.2"],
    ["make", "master.3"],
  ]);
});

test("of a part exchanged for another of its name both are drawn, apart, each lug in its own guard's words", () => {
  const place = { x: 0.05, y: 0.1, turn: 90 };
  const { there } = scenesOf(
    guard({ vol: { ...pot("250k"), place } }, [["vol.2", "jack.tip"]]),
    guard({ vol: { ...pot("500k"), place } }, [["vol.2", "jack.tip"]]),
  );
  expect([...there.belongs]).toEqual([
    ["jack", "both"],
    ["vol", "wanted"],
    ["old vol", "found"],
  ]);
  const lugs = [...layGuard(there.build, "back").lugs.values()];
  for (const [index, a] of lugs.entries())
    for (const b of lugs.slice(index + 1))
      expect(Math.hypot(a.x - b.x, a.y - b.y), `${a.name} ${b.name}`).toBeGreaterThan(10);
  expect(there.lugText("old vol.2")).toBe("vol, lug 2 (wiper)");
});

test("signs of joints at one lug lie beside it, each on its own wire and clear of the others", () => {
  const lug = { x: 0, y: 0 };
  const spots = new JointSpots([lug]);
  const ray = (degrees: number) => ({
    at: (t: number) => ({
      x: 300 * t * Math.cos((degrees * Math.PI) / 180),
      y: 300 * t * Math.sin((degrees * Math.PI) / 180),
    }),
  });
  const placed = [0, 10, 20, 30, 40].map((degrees) => spots.place(ray(degrees), true));
  for (const [index, a] of placed.entries()) {
    expect(Math.hypot(a.x, a.y)).toBeGreaterThanOrEqual(22);
    for (const b of placed.slice(index + 1)) expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeGreaterThanOrEqual(28);
  }
});

test("signs at both ends of a wire that is too short for them lie apart beside it", () => {
  const [from, to] = [
    { x: 0, y: 0 },
    { x: 0, y: 38 },
  ];
  const spots = new JointSpots([from, to]);
  const short = { at: (t: number) => ({ x: 0, y: 38 * t }) };
  const [a, b] = [spots.place(short, true), spots.place(short, false)];
  expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeGreaterThanOrEqual(28);
  for (const sign of [a, b])
    for (const lug of [from, to]) expect(Math.hypot(sign.x - lug.x, sign.y - lug.y)).toBeGreaterThanOrEqual(22);
});
