import { expect, test } from "vitest";
import { readBuild } from "../../src/build-file/read-build.ts";
import { Controls } from "../../src/build-file/settings.ts";
import { expandSweep } from "../../src/build-file/sweep.ts";
import { ResponseEngine } from "../../src/response/engine.ts";
import { logSpaced } from "../../src/response/frequencies.ts";
import { hssWithBleed, threeSingles } from "../fixtures/circuits.ts";
import { median, medianMilliseconds, report } from "./stopwatch.ts";

const STEEL = { shelf: 1370, depth: 1.4 };
const OWN = [STEEL, { pole: 3010 }, { shelf: 1230, depth: 2.4 }];
const COVERED = [STEEL, { pole: 10_500 }];
const FREQUENCIES = logSpaced(20, 20_000, 512);

interface Guard {
  readonly parts: Readonly<Record<string, { readonly coils?: Readonly<Record<string, object>> }>>;
}

/** The same guard with metal about every pickup's coils. */
function behind(guard: object, metalOf: (pickup: number) => object): object {
  let pickup = 0;
  const parts = Object.entries((guard as Guard).parts).map(([name, part]) => {
    if (!part.coils) return [name, part];
    const shielding = metalOf(pickup++);
    const coils = Object.entries(part.coils).map(([coil, values]) => [coil, { ...values, shielding }]);
    return [name, { ...part, coils: Object.fromEntries(coils) }];
  });
  return { ...guard, parts: Object.fromEntries(parts) };
}

function sweepOf(guard: object): () => unknown {
  const build = readBuild(guard);
  const settings = expandSweep(new Controls(build));
  return () => {
    const engine = new ResponseEngine(build);
    engine.plan(settings);
    return settings.map((state) => engine.transfersIn(state).levelAndPhase!(FREQUENCIES));
  };
}

const [ROUNDS, WARM_UPS] = [120, 40];

/** The median of each (ms), one after the other in every round, so that a busy machine or a cold start tells for none of them. */
function interleaved(sweeps: Readonly<Record<string, () => unknown>>): Readonly<Record<string, number>> {
  const times = new Map(Object.keys(sweeps).map((name) => [name, [] as number[]]));
  for (let round = 0; round < ROUNDS; round++)
    for (const [name, sweep] of Object.entries(sweeps)) {
      const taken = medianMilliseconds(sweep, 1, 0);
      if (round >= WARM_UPS) times.get(name)!.push(taken);
    }
  return Object.fromEntries([...times].map(([name, taken]) => [name, median(taken)]));
}

test.each([
  ["three single coils", threeSingles()],
  ["HSS, coupled humbucker, treble bleed", hssWithBleed()],
])("55 settings × 512 points, %s, with metal about the coils against without", (title, guard) => {
  const sweeps = {
    without: sweepOf(guard),
    "one metal about all": sweepOf(behind(guard, () => STEEL)),
    "each its own": sweepOf(behind(guard, (pickup) => OWN[pickup % OWN.length]!)),
    "steel under a cover": sweepOf(behind(guard, () => COVERED)),
  };
  const times = interleaved(sweeps);
  const bare = times.without!;
  report(
    `curves behind metal: ${title}`,
    Object.fromEntries(Object.entries(times).map(([name, ms]) => [`${name} (ratio)`, ms / bare])),
  );
  for (const ms of Object.values(times)) expect(ms / bare).toBeLessThan(2);
});
