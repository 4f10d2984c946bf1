import { expect, it } from "vitest";
import { guardWiringOf } from "../../src/bench/faults/kinds/guard-wiring.ts";
import { singleFaults } from "../../src/bench/faults/kinds/single-faults.ts";
import { wrongCapFaults } from "../../src/bench/faults/kinds/unseen-values.ts";
import { readBuild } from "../../src/build-file/read-build.ts";
import { Controls, parseSettings } from "../../src/build-file/settings.ts";
import { NO_CHECKPOINT } from "../../src/checkpoint.ts";
import { departuresOf } from "../../src/examine/departures/departures.ts";
import { pairOf } from "../../src/examine/departures/pair.ts";
import { examine } from "../../src/examine/examine.ts";
import { USUAL_RIG } from "../../src/examine/plan/plan.ts";
import { thoroughly } from "../effort.ts";
import { seeded, soldered } from "./simulated-guard.ts";
import { takesOf } from "./trials.ts";

const BUILD = readBuild({
  presolder: 1,
  plan: {
    layout: "one-pickup",
    pickups: { bridge: "humbucker-medium" },
    volume: "500k",
    tones: [{ pot: "500k", cap: "22n" }],
  },
});

thoroughly("names two departures at once: another cap, and half a humbucker shorted", () => {
  const cap = wrongCapFaults(guardWiringOf(BUILD)).find(({ message }) => message.includes("47 nF"))!;
  const coil = singleFaults(BUILD).find(
    ({ kind, lugs }) => kind === "coil-shorted" && lugs.some((lug) => lug.includes("slug")),
  )!;
  const settings = [{}, { tone: 0 }, { volume: 5 }].map((raw) => parseSettings(new Controls(BUILD), raw));
  const edits = [...cap.edits, ...coil.edits];
  const takes = takesOf(BUILD, edits, seeded(31), settings);
  const { verdict, departures, title, summary } = examine(
    BUILD,
    { rig: USUAL_RIG, takes, readings: [] },
    NO_CHECKPOINT,
  );
  expect(verdict, summary).toBe("departs");
  const kinds = [departures[0]!, ...departures[0]!.sameAs].map(({ faults }) =>
    faults
      .map(({ kind }) => kind)
      .sort()
      .join(),
  );
  // A winding that is shorted and its two leads that touch are one circuit.
  expect(kinds, summary).toContainEqual(
    expect.stringMatching(/^(cap-value,(coil|lugs)-shorted|(coil|lugs)-shorted,wrong-cap-value)$/),
  );
  const { cap: soldering } = soldered(BUILD, edits, seeded(31)).parts;
  if (soldering?.kind !== "cap") throw new Error("the guard has no tone cap");
  const told = /apacitor: about (\d+) nF instead of 22 nF/.exec(title);
  expect(Number(told![1]) / (soldering.capacitance * 1e9)).toBeCloseTo(1, 1);
  expect(title).toContain("; and ");
});

it("takes no two departures together of which one leaves nothing of the other", () => {
  const all = departuresOf(BUILD);
  const named = (kind: string) => all.filter((each) => each.faults([3, 3, 3, 3])[0]?.kind === kind);
  const [cut] = named("wire-open");
  expect(pairOf(BUILD, [cut!], [cut!])).toBeUndefined();
  const [cap, decade] = [named("wrong-cap-value")[0]!, named("cap-tenth")[0]!];
  expect(pairOf(BUILD, [cap], [decade])).toBeUndefined();
  // What both bring in has names of its own, the first's before the second's.
  const [one, other] = named("joint-resistive") as [(typeof all)[number], (typeof all)[number]];
  const both = pairOf(BUILD, [one], [other])!;
  expect(both.added.map(({ part }) => part)).toHaveLength(2);
  expect(new Set(both.added.map(({ part }) => part)).size).toBe(2);
  const [[first, second]] = both.both!([0.1, 10]) as unknown as [[{ ohms: number }, { ohms: number }]];
  expect(second.ohms / first.ohms).toBeCloseTo(100, 6);
});
