import fc from "fast-check";
import { CATALOGUE } from "../../src/build-file/catalogue.ts";
import { type LayoutName, layoutOf } from "../../src/build-file/plans/layouts.ts";

const ohms = fc.constantFrom("100k", "250k", "300k", "500k", "1M", 25_000);
const farads = fc.constantFrom("470p", "680p", "1n", "22n", "223", ".047", "0.1uF");
const type = fc.constantFrom(...CATALOGUE.pickups.map(({ name }) => name));
/** Left out more often than not, since every option more makes a plan likelier to be refused. */
const seldom = <T>(value: fc.Arbitrary<T>) =>
  fc.oneof({ weight: 5, arbitrary: fc.constant(undefined) }, { weight: 1, arbitrary: value });
const where = fc.oneof(
  fc.constantFrom("volume", "volume1", "tone", "tone1", "tone2"),
  fc.constantFrom("mini", "other").map((name) => ({ switch: name })),
);
const pickupName = fc.constantFrom("neck", "middle", "bridge");

function plansOf(layout: LayoutName): fc.Arbitrary<object> {
  const { pickups, tones } = layoutOf(layout);
  const own = fc.constantFrom(...pickups);
  const tone = fc.record({
    pot: ohms,
    cap: farads,
    noLoad: seldom(fc.constant(true)),
    taper: seldom(fc.constantFrom("linear", "audio", "reverse-audio")),
    pickups: fc.option(fc.uniqueArray(own, { minLength: 1, maxLength: 2 }), { nil: undefined, freq: 2 }),
  });
  const by = fc.oneof(
    where,
    fc.constantFrom(2, 4).map((position) => ({ position })),
  );
  const named = fc.tuple(...pickups.map(() => type)).map((types) => types.map((name, i) => [pickups[i], name]));
  return fc
    .record({
      layout: fc.constant(layout),
      pickups: named.map((entries) => Object.fromEntries(entries)),
      volume: ohms,
      tones: fc.array(tone, { minLength: tones.min, maxLength: tones.max }),
      independentVolumes: seldom(fc.boolean()),
      toneFeed: seldom(fc.constantFrom("before-volume", "after-volume")),
      trebleBleed: seldom(fc.record({ capacitance: farads, series: ohms }, { requiredKeys: ["capacitance"] })),
      split: seldom(fc.record({ pickup: pickupName, by, keeps: fc.constantFrom("slug", "screw") })),
      seriesParallel: seldom(fc.record({ pickup: pickupName, by: where })),
      phase: seldom(fc.record({ pickup: pickupName, by: where })),
      seriesLink: seldom(fc.record({ pickups: fc.tuple(own, own), by: where })),
      alwaysOn: seldom(fc.record({ pickup: own, by: where })),
      resistors: seldom(
        fc.array(fc.record({ across: fc.oneof(own, fc.constant("volume")), resistance: ohms }), { maxLength: 2 }),
      ),
      grounds: seldom(fc.constantFrom("cases", "star")),
      shield: seldom(fc.boolean()),
    })
    .map((made) => JSON.parse(JSON.stringify(made)));
}

/** Any plan, whether or not it can be wired. */
export const anyPlan = fc.constantFrom(...CATALOGUE.layouts.map(({ name }) => name)).chain(plansOf);
