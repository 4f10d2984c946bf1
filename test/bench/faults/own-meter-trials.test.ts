import { describe, expect, it } from "vitest";
import { diagnose } from "../../../src/bench/faults/diagnose.ts";
import { type MeasuredReading, observed } from "../../../src/bench/faults/diagnose-request.ts";
import { editBuild } from "../../../src/bench/faults/edits/edit-build.ts";
import { displayOf } from "../../../src/bench/meter/own/display.ts";
import { errorOhms, widened } from "../../../src/bench/meter/own/meter-error.ts";
import { METER_KIND_NAMES } from "../../../src/bench/meter/own/meter-kinds.ts";
import { leadsLeft, type OwnMeter, ownMeterOf } from "../../../src/bench/meter/own/own-meter.ts";
import { meterReadings } from "../../../src/bench/meter/readings.ts";
import { fits, NO_GRANT } from "../../../src/bench/meter/shown.ts";
import { standingReadings } from "../../../src/bench/meter/standing-readings.ts";
import type { Build } from "../../../src/build-file/schema.ts";
import { scenarioBuilds } from "../scenario-builds.ts";
import { assembled, measuredAs, type Random, seeded, singleFaults } from "./blind-trials.ts";

const build = scenarioBuilds.find(({ name }) => name.startsWith("long-cable"))!.build;
const plans = standingReadings(build);

/** What is read off a display: in error anywhere within what the meter may be, in steps of its last digit. */
function onDisplay(meter: OwnMeter, reading: MeasuredReading, random: Random): MeasuredReading {
  if (reading.ohms === null || reading.ohms === undefined) return { ...reading, ohms: null, isOver: true };
  const off = (2 * random() - 1) * errorOhms(meter, reading.ohms + leadsLeft(meter));
  const { display, unit } = displayOf(meter, Math.max(0, reading.ohms + off));
  if (unit === "") return { ...reading, ohms: null, isOver: true };
  const scale =
    meter.ranging === "needle" ? displayOf(meter, Math.max(0, reading.ohms + off)).range / meter.ranges[0]! : 1;
  return { ...reading, ohms: Number(display) * scale * { Ω: 1, kΩ: 1e3, MΩ: 1e6 }[unit] };
}

function readWith(meter: OwnMeter, guard: Build, random: Random): MeasuredReading[] {
  return measuredAs(build, guard, plans, random, 0).map((reading) => onDisplay(meter, reading, random));
}

describe("a guard read with the person's own meter", () => {
  it.each(METER_KIND_NAMES)(
    "%s: sound ones are called sound, and broken connections are among the first three",
    (kind) => {
      const meter = ownMeterOf(kind);
      const random = seeded(11);
      for (let trial = 0; trial < 3; trial++) {
        const readings = readWith(meter, assembled(build, random), random);
        expect(diagnose(build, { readings, meter }).explanations[0]!.faults[0]!.kind).toBe("none");
      }
      const faults = singleFaults(build)
        .filter(({ kind: what }) => what === "wire-open" || what === "coil-open")
        .filter((_, index) => index % 3 === 0);
      const found = faults.filter((truth) => {
        const readings = readWith(meter, editBuild(assembled(build, random), truth.edits), random);
        const named = diagnose(build, { readings, meter }).explanations.slice(0, 3);
        return named.some((each) =>
          [each, ...each.sameAs].some(
            ({ faults: [only, ...others] }) =>
              others.length === 0 && only!.kind === truth.kind && only!.lugs.join() === truth.lugs.join(),
          ),
        );
      });
      expect(found.length / faults.length).toBeGreaterThanOrEqual(0.95);
    },
  );

  it.each(["manual-2000", "manual-2000-to-2M"] as const)("%s: sound on whichever range it stays", (kind) => {
    const random = seeded(13);
    for (const range of ownMeterOf(kind).ranges) {
      const meter = ownMeterOf({ kind, range });
      for (let trial = 0; trial < 2; trial++) {
        const readings = readWith(meter, assembled(build, random), random);
        expect(diagnose(build, { readings, meter }).explanations[0]!.faults[0]!.kind, `${range} Ω`).toBe("none");
        const told = readings.map((reading) => ({ ...reading, range }));
        const by = ownMeterOf(kind);
        expect(diagnose(build, { readings: told, meter: by }).explanations[0]!.faults[0]!.kind, `${range}`).toBe(
          "none",
        );
      }
    }
  });

  it("says under how many ohms a reading is that a coarse range shows as nothing, and finds what is open all the same", () => {
    const meter = ownMeterOf({ kind: "manual-2000", range: 20e6 });
    const [first] = plans;
    const reading = { between: first!.between, settings: {} };
    expect(diagnose(build, { readings: [{ ...reading, ohms: 0 }], meter }).explanations[0]!.faults[0]!.kind).toBe(
      "none",
    );
    expect(observed({ ...reading, ohms: 0 }, meter, () => 0).below).toBeCloseTo(25_000 - meter.leads, 6);
    const open = diagnose(build, { readings: [{ ...reading, ohms: null, isOver: true }], meter });
    expect(open.explanations[0]!.faults[0]!.kind).not.toBe("none");
  });

  it("fits where it is sound: what its display shows lies within what the table says it may", () => {
    const random = seeded(12);
    for (const kind of METER_KIND_NAMES) {
      const meter = ownMeterOf(kind);
      const { readings } = meterReadings(build, { meter });
      const exact = meterReadings(build).readings;
      for (const [index, { ohms, ...rest }] of exact.entries()) {
        if (ohms === null || rest.sweep || rest.potEndUnder) continue;
        const shown = onDisplay(meter, { between: rest.between, ohms }, random);
        const range = readings[index]!;
        expect(range).toMatchObject(widened(meter, exact[index]!));
        if (!shown.isOver) expect(fits(range, { ohms: shown.ohms! }, NO_GRANT), `${kind} ${rest.label}`).toBe(true);
      }
    }
  });
});
