import { describe, expect, it } from "vitest";
import { findLeads } from "../../../src/bench/leads/find-leads.ts";
import type { Labelling } from "../../../src/bench/leads/weigh.ts";
import { NO_CHECKPOINT } from "../../../src/checkpoint.ts";
import { casesOf } from "../../effort.ts";
import { Random } from "../../random.ts";
import { Universe } from "./identifiable.ts";
import { type BenchPickup, measured } from "./pickup-on-the-bench.ts";

const ENDS = ["0s", "0f", "1s", "1f"];

/** One text for a labelling, whoever made it. */
function nameOf(nets: readonly (readonly string[])[], leads: readonly number[], magnets: string, open: string): string {
  const named = nets.map((net) => [...net].sort().join("+"));
  const hidden = named.filter((_, net) => !leads.includes(net) && named[net] !== "metal").sort();
  return [leads.map((net) => named[net] ?? "nothing").join(" "), hidden, magnets, open].join(" | ");
}

function foundName({ structure, places, magnets }: Labelling): string {
  const nets = structure.places.map(({ ends, hasMetal }) => [
    ...ends.map((end) => ENDS[end]!),
    ...(hasMetal ? ["metal"] : []),
  ]);
  const tops = Array.from({ length: structure.coils }, (_, coil) => ((magnets >> coil) & 1 ? "S" : "N")).join("");
  return nameOf(nets, places, tops, structure.broken.slice(0, structure.coils).join());
}

const trueName = ({ nets, leads, magnets, open }: BenchPickup) => nameOf(nets, leads, magnets.join(""), open.join());

/** Sums of twelve uniform numbers are near enough to normal for a meter. */
function normal(random: () => number): number {
  return Array.from({ length: 12 }, random).reduce((sum, each) => sum + each, -6);
}

const WHOLE_MS = 1_200_000;

describe("every labelling of an unknown pickup, with a meter's noise", () => {
  for (const [coils, leadCount, sample] of [
    [1, 2, 6],
    [1, 3, 6],
    [2, 2, 6],
    [2, 3, 8],
    [2, 4, 10],
    [2, 5, 4],
  ] as const)
    it(`keeps the true one of ${coils} coil${coils > 1 ? "s" : ""} and ${leadCount} leads, and puts it first wherever nothing else can read so`, {
      timeout: WHOLE_MS,
    }, () => {
      const universe = new Universe(coils, leadCount);
      const source = new Random(1000 * coils + leadCount);
      const random = () => source.next();
      let decided = 0;
      const cases = casesOf(universe.pickups, sample, 150);
      for (const pickup of cases) {
        const first = 3000 * Math.exp(random());
        const ohms = [first, first * Math.exp(0.04 * normal(random))];
        const request = measured(pickup, ohms, () => Math.exp(0.01 * normal(random)));
        const { labellings } = findLeads(request, 1, NO_CHECKPOINT);
        const own = labellings.find((labelling) => foundName(labelling) === trueName(pickup));
        expect(own?.probability, JSON.stringify(pickup)).toBeGreaterThan(1e-4);
        if (!universe.isIdentifiable(pickup, ohms)) continue;
        decided += 1;
        expect(foundName(labellings[0]!), JSON.stringify(pickup)).toBe(trueName(pickup));
      }
      if (leadCount > 3 || coils === 1) expect(decided).toBeGreaterThan(cases.length / 2);
    });
});
