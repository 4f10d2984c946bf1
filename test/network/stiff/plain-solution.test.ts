import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { solveTransfers } from "../../../src/network/nodal-analysis.ts";
import { assemblePencil } from "../../../src/network/pencil.ts";
import { casesOf } from "../../effort.ts";
import { STIFF_NETWORKS, stiffNetwork } from "./stiff-networks.ts";

/** −300 dB. */
const FLOOR = 1e-15;
const reference = JSON.parse(readFileSync("test/network/stiff/stiff-networks.json", "utf8")) as [number, number][][];
const seeds = Array.from({ length: STIFF_NETWORKS }, (_, seed) => seed);

test("the plain solution has ten digits of a 50-digit one, with parts from micro- to teraohms in one network", () => {
  expect(reference).toHaveLength(STIFF_NETWORKS);
  for (const seed of casesOf(seeds, 100)) {
    const { network, output, frequenciesHz } = stiffNetwork(seed);
    const [{ re, im }] = solveTransfers(assemblePencil(network), output, frequenciesHz) as [
      { re: Float64Array; im: Float64Array },
    ];
    for (const [i, [wantedRe, wantedIm]] of reference[seed]!.entries()) {
      const error = Math.hypot(re[i]! - wantedRe, im[i]! - wantedIm);
      const most = 1e-10 * Math.hypot(wantedRe, wantedIm) + FLOOR;
      if (!(error <= most)) expect.soft(error, `network ${seed}, frequency ${i}`).toBeLessThanOrEqual(most);
    }
  }
});
