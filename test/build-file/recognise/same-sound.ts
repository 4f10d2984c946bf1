import { expect } from "vitest";
import { readBuild } from "../../../src/build-file/read-build.ts";
import type { BuildInput } from "../../../src/build-file/schema.ts";
import { Controls, parseSettings } from "../../../src/build-file/settings.ts";
import { curveOf } from "../../../src/response/curve.ts";
import { ResponseEngine } from "../../../src/response/engine.ts";

const FREQUENCIES = Float64Array.of(90, 700, 2500, 6000);

function curvesOf(guard: BuildInput, settings: readonly Record<string, number>[]) {
  const build = readBuild(guard);
  const engine = new ResponseEngine(build);
  const controls = new Controls(build);
  return settings.map((raw) => curveOf(engine.transfersIn(parseSettings(controls, raw)), FREQUENCIES));
}

/**
 * Expects two guards to have the same controls and the same curves in a few settings of them.
 * @param names what the first calls each part, by the second's name
 */
export function expectSameSound(first: BuildInput, second: BuildInput, names: Readonly<Record<string, string>>): void {
  const { pots, switches } = new Controls(readBuild(second));
  const inFirst = (control: string) => {
    const [part = "", ...rest] = control.split(".");
    return [names[part] ?? part, ...rest].join(".");
  };
  const drawn = [1, 2, 3, 4, 5].map((turn) => [
    ...pots.map((pot, i) => [pot, (turn * 3 + i * 5) % 11] as const),
    ...switches.map(
      ({ name, table }, i) => [name, 1 + ((turn + i * (turn > 2 ? 1 : 0)) % table.positions.length)] as const,
    ),
  ]);
  const own = curvesOf(
    second,
    drawn.map((entries) => Object.fromEntries(entries)),
  );
  const others = curvesOf(
    first,
    drawn.map((entries) => Object.fromEntries(entries.map(([name, value]) => [inFirst(name), value]))),
  );
  // Both are the same network, with nodes and parts in another order: a billionth of a decibel is rounding.
  for (const [i, { magnitude }] of own.entries())
    for (const [k, level] of magnitude.entries())
      expect(Math.abs(level - others[i]!.magnitude[k]!), `setting ${i}`).toBeLessThan(1e-6);
}
