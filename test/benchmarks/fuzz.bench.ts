import { expect, test } from "vitest";
import { fuzz } from "../server/fuzz/run.ts";

const { FUZZ_INPUTS, FUZZ_SEED } = process.env;
const inputs = Number(FUZZ_INPUTS || 100_000);
const seed = Number(FUZZ_SEED || 1_000_000);

test(`${inputs} spoilt inputs bring no crash, no 5xx and no answer with a number missing`, {
  timeout: 3_600_000,
}, async () => {
  const began = performance.now();
  const { faults, statuses, workersLost, slowestMs, slowest } = await fuzz({ seed, inputs, workers: 2 });
  const byName = [...statuses].sort().map(([name, count]) => `${name}: ${count}`);
  console.log(
    `${inputs} inputs from seed ${seed} in ${Math.round((performance.now() - began) / 1_000)} s\n  ${byName.join("\n  ")}`,
  );
  console.log(`slowest ${Math.round(slowestMs)} ms: ${slowest.slice(0, 400)}`);
  for (const fault of faults) console.log(fault);
  expect([faults.length, workersLost]).toEqual([0, 0]);
});
