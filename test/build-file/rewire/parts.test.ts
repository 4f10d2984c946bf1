import { expect, test } from "vitest";
import { readBuild } from "../../../src/build-file/read-build.ts";
import { type Rewiring, rewire } from "../../../src/build-file/rewire/rewire.ts";
import { onePickup } from "../../fixtures/circuits.ts";

const single = (values: object = {}) => ({
  kind: "pickup",
  coils: { coil: { resistance: "6k", inductance: "2.4H", capacitance: "110p", ...values } },
});
const jack = { kind: "jack" };
const cap = (capacitance: string) => ({ kind: "cap", capacitance });
const pot = (resistance: string, role = "tone") => ({ kind: "pot", role, resistance });

function rewired(
  from: { parts: object; wires?: unknown[] },
  to: { parts: object; wires?: unknown[] },
  more: object = { pickup: single(), jack },
): Rewiring {
  const read = ({ parts, wires = [] }: typeof from) => readBuild({ presolder: 1, parts: { ...more, ...parts }, wires });
  return rewire(read(from), read(to));
}

const doneAt = ({ steps }: Rewiring) => steps.map((step) => `${step.do} ${step.at}`);

test("a part that is called otherwise stays with all its joints, its lugs under the new name", () => {
  const { steps, parts, kept } = rewired(
    { parts: { vol: pot("250k", "volume") }, wires: [["vol.2", "jack.tip"]] },
    { parts: { master: pot("0.25M", "volume") }, wires: [["jack.tip", "master.2"]] },
  );
  expect(steps).toEqual([]);
  expect(parts.stay).toContainEqual({ from: "vol", to: "master" });
  expect(kept).toEqual([{ wire: 0, from: "master.2", to: "jack.tip", means: "wire" }]);
});

test("parts that are to change places stay both, and are bought neither", () => {
  const { parts } = rewired(
    { parts: { one: pot("250k"), two: pot("500k") } },
    { parts: { one: pot("500k"), two: pot("250k") } },
  );
  expect(parts).toMatchObject({ comeIn: [], goOut: [] });
  expect(parts.stay).toEqual(expect.arrayContaining([{ from: "two", to: "one" }]));
});

test("of several parts as good as each other the one that is wired as wanted stays", () => {
  const { steps, parts } = rewired(
    { parts: { a: pot("250k"), b: pot("250k") }, wires: [["b.2", "jack.tip"]] },
    { parts: { tone: pot("250k") }, wires: [["tone.2", "jack.tip"]] },
  );
  expect(steps).toEqual([]);
  expect(parts.stay).toContainEqual({ from: "b", to: "tone" });
  expect(parts.goOut).toEqual([{ name: "a", replacedBy: null }]);
});

test("where no part is as wanted, the nearest in value goes out for it", () => {
  const { parts } = rewired({ parts: { small: cap("2.2n"), large: cap("100n") } }, { parts: { tone: cap("47n") } });
  expect(parts.comeIn).toEqual([{ name: "tone", replaces: "large" }]);
  expect(parts.goOut).toEqual([
    { name: "small", replacedBy: null },
    { name: "large", replacedBy: "tone" },
  ]);
});

test("a claw does not stand for a foil, whatever is free", () => {
  const { parts } = rewired(
    { parts: { metal: { kind: "terminal", role: "claw" } } },
    { parts: { metal: { kind: "terminal", role: "shield" } } },
  );
  expect(parts.stay.map(({ to }) => to)).toEqual(["pickup", "jack"]);
});

test("a pickup exchanged for another takes each of its leads with it, and what it met stays soldered", () => {
  const [from, to] = [onePickup(), onePickup({ pickup: single({ inductance: "3H" }) })].map(readBuild);
  const rewiring = rewire(from!, to!);
  expect(doneAt(rewiring)).toEqual(["open volume.3", "make volume.3", "open volume.case", "make volume.case"]);
  expect(rewiring.kept).toHaveLength(7);
  expect(rewiring.parts.comeIn).toEqual([{ name: "pickup", replaces: "pickup" }]);
});

test("wires between parts that go out together are left on them", () => {
  const { leaving, steps } = rewired(
    {
      parts: { a: pot("250k"), b: pot("250k") },
      wires: [
        ["a.case", "b.case"],
        ["a.1", "a.case"],
        ["b.2", "jack.tip"],
      ],
    },
    { parts: {} },
  );
  expect(leaving).toEqual([0, 1]);
  expect(steps.map(({ at, fate }) => [at, fate])).toEqual([["jack.tip", "part"]]);
});

test("what was measured of a part that stays is not forgotten, and what is printed on it is as wanted", () => {
  const from = onePickup({ parts: { tone: { ...pot("250k"), taper: "audio", measured: "231k" } } });
  const { result, parts } = rewire(readBuild(from), readBuild(onePickup({ rest: { title: "Wanted" } })));
  expect(result.parts.tone).toMatchObject({ measured: 231_000, resistance: 250_000 });
  expect(result.title).toBe("Wanted");
  expect(parts.goOut).toEqual([]);
});

test("a cap of another make is another part, and one of no known make serves for any", () => {
  const made = (dielectric?: string) => ({ parts: { c: { ...cap("22n"), ...(dielectric ? { dielectric } : {}) } } });
  expect(rewired(made("film-pet"), made("ceramic-z5u")).parts.comeIn).toHaveLength(1);
  expect(rewired(made(), made("film-pet")).parts.comeIn).toEqual([]);
});
