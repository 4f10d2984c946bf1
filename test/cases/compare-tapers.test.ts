import { expect, it } from "vitest";
import { readBuild } from "../../src/build-file/read-build.ts";
import { Guard } from "../../src/choice/guard.ts";
import { onePickup } from "../fixtures/circuits.ts";
import { withIdealPots } from "../ideal-pots.ts";
import { level } from "./one-pickup.ts";

// Volume at 5 against 10 with nothing loading the pot: the level is the fraction of the track below the wiper, 20·log10.
function unloaded(volume: object): Guard {
  const build = onePickup({
    pickup: { kind: "pickup", coils: { coil: { resistance: 0.001, inductance: 1e-6 } } },
    parts: { volume: { kind: "pot", role: "volume", resistance: "250k", ...volume } },
    rest: { cable: { length: 0, capacitance: 0 }, load: { resistance: 1e12 } },
  });
  return new Guard(withIdealPots(readBuild(build)));
}

it.each([
  [{ taper: "linear" }, -6.0],
  [{ taper: "audio", midpoint: 0.35 }, -9.1],
  [{ taper: "audio", midpoint: 0.3 }, -10.5],
  [{ taper: "audio", midpoint: 0.2 }, -14.0],
  [{ taper: "audio", midpoint: 0.1 }, -20.0],
])("a volume pot of %o at 5 stands at %d dB", (volume, decibels) => {
  const guard = unloaded(volume);
  expect(Math.abs(level(guard, { volume: 5 }, 100) - level(guard, {}, 100) - decibels)).toBeLessThan(0.06);
});
