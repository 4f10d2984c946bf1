import { describe, expect, test } from "vitest";
import { misfitOf } from "../../src/drawer/serves.ts";
import { cap, part, pot } from "./drawers.ts";

const misfit = (wanted: object, offered: object, measured?: number) =>
  misfitOf(part(wanted), { part: part(offered), measured });

describe("what serves for what", () => {
  test("a 22 nF cap is served by one that measures 21.3 nF, within the wanted cap's own tolerance alone", () => {
    expect(misfit(cap("22n"), cap("22n"), 21.3e-9)).toBeCloseTo(0.7 / 22, 12);
    expect(misfit(cap("22n", { tolerance: 0.02 }), cap("22n"), 21.3e-9)).toBeNull();
    expect(misfit(cap("22n"), cap("22n"), 19.7e-9)).toBeNull();
  });

  test("a value right on the bound serves", () => {
    expect(misfit(cap("20n", { tolerance: 0.1 }), cap("22n"), 22e-9)).toBeCloseTo(0.1, 9);
    expect(misfit(cap("20n", { tolerance: 0.1 }), cap("18n"), 18e-9)).toBeCloseTo(0.1, 9);
  });

  test("of a part that nobody measured its print has to be the wanted one", () => {
    expect(misfit(cap("22n"), cap("0.022uF"))).toBeLessThan(1e-9);
    expect(misfit(cap("22n"), cap("20n"))).toBeNull();
    expect(misfit(cap("22n"), cap("20n"), 20.6e-9)).not.toBeNull();
  });

  test("a cap whose make is asked for is served by that make alone", () => {
    expect(misfit(cap("22n", { dielectric: "film-pp" }), cap("22n"))).toBeNull();
    expect(misfit(cap("22n"), cap("22n", { dielectric: "film-pp" }))).toBeLessThan(1e-9);
  });

  test("a push-pull serves as a plain pot when nothing plainer does, and a plain pot never as a push-pull", () => {
    expect(misfit(pot("250k"), pot("250k", { drives: "dpdt" }))).toBe(1);
    expect(misfit(pot("250k", { drives: "dpdt" }), pot("250k"))).toBeNull();
    expect(misfit(pot("250k"), pot("250k", { taper: "linear" }))).toBeNull();
    expect(misfit(pot("250k"), pot("250k"), 231e3)).toBeCloseTo(19 / 250, 12);
  });

  test("a pickup is served by one of the same winding and magnet, with at least as many leads", () => {
    const coil = { resistance: "6k", inductance: "2.5H" };
    const single = (values: object) => ({ kind: "pickup", coils: { coil: { ...coil, ...values } } });
    expect(misfit(single({}), single({ resistance: "6.1k" }))).toBeCloseTo(0.1 / 6, 9);
    expect(misfit(single({}), single({ winding: "reverse", magnet: "south" }))).toBeNull();
    expect(misfit(single({}), single({ inductance: "3H" }))).toBeNull();
    const two = (conductors: 2 | 4) => ({ kind: "pickup", conductors, coils: { slug: coil, screw: coil } });
    expect(misfit(two(4), two(2))).toBeNull();
    expect(misfit(two(2), two(4))).toBe(1);
  });

  test("a stereo jack serves as a plain one, another switch as none", () => {
    expect(misfit({ kind: "jack" }, { kind: "jack", stereo: true })).toBe(1);
    expect(misfit({ kind: "jack", stereo: true }, { kind: "jack" })).toBeNull();
    expect(misfit({ kind: "switch", type: "lever-5" }, { kind: "switch", type: "lever-5" })).toBe(0);
    expect(misfit({ kind: "switch", type: "lever-5" }, { kind: "switch", type: "lever-3" })).toBeNull();
    expect(misfit({ kind: "terminal" }, { kind: "jack" })).toBeNull();
  });
});
