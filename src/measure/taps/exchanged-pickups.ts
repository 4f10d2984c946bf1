import { lugsOfPart } from "../../build-file/lugs.ts";
import { partsOfKind } from "../../build-file/parts-of-kind.ts";
import type { Build } from "../../build-file/schema.ts";
import type { Exchange } from "./exchanged-positions.ts";
import { foretoldTaps } from "./foretold-taps.ts";
import type { TapStep } from "./plan-taps.ts";
import type { TapInput } from "./tap-transfers.ts";
import { pickupCalled } from "./tap-words.ts";

const leadsOf = (build: Build, pickup: string) =>
  lugsOfPart(pickup, build.parts[pickup]!)
    .map(({ name }) => name.slice(pickup.length + 1))
    .filter((lead) => lead !== "shield")
    .join();

/** What taps would make were two pickups of equal leads each wired as the other should be. */
export function exchangedPickups(build: Build, steps: readonly TapStep[], input: TapInput | undefined): Exchange[] {
  const pickups = partsOfKind(build, "pickup").map(([name]) => name);
  return pickups.flatMap((one, index) =>
    pickups.slice(index + 1).flatMap((other): Exchange[] => {
      if (leadsOf(build, one) !== leadsOf(build, other)) return [];
      const exchanged = { ...build, parts: { ...build.parts, [one]: build.parts[other]!, [other]: build.parts[one]! } };
      const wiredAs = (pickup: string) => (pickup === one ? other : pickup === other ? one : pickup);
      const moved = steps.map((step) => ({ ...step, pickup: wiredAs(step.pickup) }));
      const [first, second] = [one, other].map((pickup) => pickupCalled(build, pickup));
      const message = `The ${first} and the ${second} have changed places: each is wired as the other should be.`;
      return [{ foretold: foretoldTaps(exchanged, moved, input), message }];
    }),
  );
}
