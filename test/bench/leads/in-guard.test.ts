import { describe, expect, it } from "vitest";
import { auditBuild } from "../../../src/bench/audit/audit.ts";
import { answerLeads } from "../../../src/bench/leads/answer-leads.ts";
import { phaseCheck } from "../../../src/bench/phase-check.ts";
import { expandBuild } from "../../../src/build-file/expand.ts";
import { readBuild } from "../../../src/build-file/read-build.ts";
import { recognise } from "../../../src/build-file/recognise/recognise.ts";
import type { Pickup } from "../../../src/build-file/schema.ts";
import { LugWords } from "../../../src/build-file/words/lug-words.ts";
import { NO_CHECKPOINT } from "../../../src/checkpoint.ts";
import { emfSign } from "../../../src/response/pickup-elements.ts";
import { casesOf } from "../../effort.ts";
import { onePickup } from "../../fixtures/circuits.ts";
import { PLAN } from "../../server/plan.ts";
import { type BenchPickup, everyPickup, measured } from "./pickup-on-the-bench.ts";

function putInto(
  file: unknown,
  place: string,
  pickup: BenchPickup,
  reference?: { pickup: string; kick: "up" | "down" },
) {
  const request = measured(pickup, [4000, 4600]);
  const guard = { build: readBuild(file), source: expandBuild(file), place, reference };
  const answer = answerLeads(request, guard, NO_CHECKPOINT);
  return { request, answer, build: readBuild(answer.guard) };
}

const HUMBUCKER: BenchPickup = {
  coils: 2,
  nets: [["0s"], ["0f"], ["1s"], ["1f"], ["metal"]],
  leads: [0, 1, 2, 3, 4],
  magnets: ["N", "S"],
  open: [false, false],
};
const SINGLE = (tops: "N" | "S", leads = [0, 1]): BenchPickup => ({
  coils: 1,
  nets: [["0s"], ["0f"]],
  leads,
  magnets: [tops],
  open: [false],
});

const kickOf = ({ between, kick }: { between: readonly string[]; kick: string }, plus: string) => {
  if (kick === "none" || between[0] === plus) return kick;
  return kick === "up" ? "down" : "up";
};

describe("a pickup put into a guard", () => {
  const SOUND = [...everyPickup(1, 2), ...everyPickup(2, 2), ...everyPickup(2, 3), ...everyPickup(2, 4)];
  // Four ways for the magnets come after each other: every ninth goes through them too.
  const ALL = SOUND.filter((_, index) => index % 9 === 0);
  // Of what is alone, nothing decides its phase but itself; where both coils kill each other, there is nothing to kick.
  it("kicks at the jack as the model's EMF has it, and as its leads were seen to kick: sampled over every labelling", () => {
    let compared = 0;
    for (const pickup of casesOf(ALL, 16)) {
      const { request, answer, build } = putInto(onePickup(), "pickup", pickup);
      const { main } = answer.withGuard!.wiring!;
      const { kickAtJack, coils } = phaseCheck(build).pickups[0]!;
      const part = build.parts.pickup as Pickup;
      for (const { coil, kick } of coils) expect(kick).toBe(emfSign(part.coils[coil]!) > 0 ? "up" : "down");
      if (!main!.aids || kickAtJack === null) continue;
      expect(kickAtJack, JSON.stringify(pickup)).toBe(main!.kick);
      const [hot, ground] = [main!.hot[0]!, main!.ground[0]!];
      const seen = request.kicks.filter(({ between }) => between.includes(hot) && between.includes(ground));
      for (const each of seen.filter(({ kick }) => kick !== "none")) {
        expect(kickOf(each, hot), JSON.stringify(pickup)).toBe(kickAtJack);
        compared += 1;
      }
    }
    expect(compared).toBeGreaterThan(3);
  });

  it("is wired so that the audit finds nothing against phase, hum or metal", () => {
    const { answer, build } = putInto(PLAN, "bridge", HUMBUCKER);
    expect(answer.withGuard!.text).toMatch(/^In phase/);
    const wrong = auditBuild(build).filter(
      ({ severity, lugs }) => severity !== "note" && lugs.some((lug) => lug.startsWith("bridge.")),
    );
    expect(wrong).toEqual([]);
    expect((build.parts.bridge as Pickup).coils.screws!.resistance).toBeCloseTo(4000, -2);
    const words = new LugWords(build);
    expect(words.of("bridge.screws.finish")).toMatch(/screws coil \(north\), finish \(white\)$/);
    expect(words.of("bridge.shield")).toMatch(/cover \(bare\)$/);
    expect(recognise(build)).toBeDefined();
  });

  it.each([
    ["N", [0, 1], "north"],
    ["N", [1, 0], "north"],
    ["S", [0, 1], "south"],
    ["S", [1, 0], "south"],
  ] as const)(
    "agrees with the others and cancels hum with the opposite magnet: a single coil, %s up, leads %s",
    (tops, leads, magnet) => {
      const { answer, build } = putInto(PLAN, "neck", SINGLE(tops, [...leads]));
      expect(phaseCheck(build).pickups.every(({ agrees }) => agrees)).toBe(true);
      const middle = answer.withGuard!.beside.find(({ pickup }) => pickup === "middle")!;
      const other = Object.values((build.parts.middle as Pickup).coils)[0]!.magnet;
      expect(middle.cancelsHum).toBe(other !== magnet);
      if (!middle.cancelsHum) expect(middle.text).toMatch(/loose bar magnet.*rods are never pulled out/);
    },
  );

  it("turns round where the needle goes the other way on a pickup of the guard", () => {
    const { kickAtJack } = phaseCheck(readBuild(PLAN)).pickups.find(({ pickup }) => pickup === "middle")!;
    const against = kickAtJack === "up" ? "down" : "up";
    const same = putInto(PLAN, "neck", SINGLE("N"), { pickup: "middle", kick: kickAtJack! });
    const other = putInto(PLAN, "neck", SINGLE("N"), { pickup: "middle", kick: against });
    const [a, b] = [same, other].map(({ answer }) => answer.withGuard!.wiring!.main!);
    expect([a!.hot, a!.ground]).toEqual([b!.ground, b!.hot]);
  });

  it.each([
    ["", [0, 2]],
    [", their joint brought out", [0, 1, 2]],
  ])(
    "says that coils joined against each other are in phase with nothing%s, whichever setting lets them through",
    (_, leads) => {
      const pickup: BenchPickup = {
        coils: 2,
        nets: [["0s"], ["0f", "1s"], ["1f"]],
        leads,
        magnets: ["N", "S"],
        open: [false, false],
      };
      const { answer } = putInto(PLAN, "neck", pickup);
      expect(answer.withGuard!.wiring!.main!.aids).toBe(false);
      expect(answer.withGuard!.text).toMatch(
        /^Its coils are against each other, so that it is in phase with nothing: /,
      );
    },
  );

  it("refuses a place that is none by its name, with those there are", () => {
    expect(() => putInto(PLAN, "brigde", HUMBUCKER)).toThrow(/place: "brigde" is neither.*bridge/);
  });
});
