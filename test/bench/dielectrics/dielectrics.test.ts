import { spawnSync } from "node:child_process";
import { describe, expect, it } from "vitest";
import { dielectricsAsked } from "../../../src/bench/dielectrics/asked.ts";
import { dielectricsTold } from "../../../src/bench/dielectrics/dielectrics.ts";
import { toneCapsOf } from "../../../src/bench/dielectrics/tone-caps.ts";
import { CATALOGUE } from "../../../src/build-file/catalogue.ts";
import { readBuild } from "../../../src/build-file/read-build.ts";
import { Controls } from "../../../src/build-file/settings.ts";
import { flatDrive } from "../../../src/choice/drive.ts";
import { SLICES, SLICES_PER_BAND } from "../../../src/choice/slices.ts";
import { faultsFrom } from "../../build-file/refusals.ts";
import { onePickup } from "../../fixtures/circuits.ts";
import { withIdealPots } from "../../ideal-pots.ts";
import { describeWith } from "../../tools.ts";

const told = (build: Parameters<typeof dielectricsAsked>[0], caps?: string[]) =>
  dielectricsTold(dielectricsAsked(build, caps), flatDrive());
const guard = withIdealPots(readBuild(onePickup()));
const answer = told(guard);
const rowOf = (name: string) => answer.caps[0]!.rows.find(({ dielectric }) => dielectric === name)!;

describe("which caps are asked about", () => {
  it("are those that a tone control has, not the treble bleed", () => {
    const build = readBuild({
      presolder: 1,
      plan: { ...CATALOGUE.plans[0]!.plan, trebleBleed: { capacitance: "680p", parallel: "150k" } },
    });
    expect(toneCapsOf(build)).toEqual(["cap1", "cap2"]);
    expect(Object.keys(build.parts)).toContain("bleed");
  });

  it("are those of every customary guard with a tone", () => {
    for (const { plan } of CATALOGUE.plans) {
      const caps = toneCapsOf(readBuild({ presolder: 1, plan }));
      expect(caps.length > 0, JSON.stringify(plan)).toBe((plan.tones?.length ?? 0) > 0);
    }
  });

  it("are all there are where no tone has one, and are refused by the name that is none", () => {
    const noTone = readBuild(
      onePickup({ parts: { tone: { kind: "pot", role: "other", resistance: "250k", taper: "audio" } } }),
    );
    expect(dielectricsAsked(noTone).caps).toEqual(["cap"]);
    expect(faultsFrom(() => dielectricsAsked(guard, ["cap", "cup"]))).toEqual([
      { path: "caps.1", message: 'there is no cap "cup"; did you mean "cap"?' },
    ]);
  });

  it("are refused of a guard so large that nobody would wait for the answer, with how many settings could be solved", () => {
    const whole = readBuild({
      presolder: 1,
      plan: CATALOGUE.plans.find(({ id }) => id === "hsh-automatic-splits")!.plan,
    });
    const cap = whole.parts.cap1!;
    const names = Array.from({ length: 50 }, (_, k) => `more${k}`);
    const parts = { ...whole.parts, ...Object.fromEntries(names.map((name) => [name, cap])) };
    // A chain from the jack's tip: every cap brings a net of its own.
    const wires = names.map((name, k) => ({
      ...whole.wires[0]!,
      from: `${name}.a`,
      to: k === 0 ? "jack.tip" : `more${k - 1}.b`,
    }));
    const large = { ...whole, parts, wires: [...whole.wires, ...wires] };
    expect(() => dielectricsAsked(large)).toThrow(/^caps: 4510 settings .* expected at most \d+: ask of fewer caps$/);
  });
});

describe("what a cap is made of", () => {
  it("is not heard of films, paper, mica and C0G at the same measured value", () => {
    for (const name of ["film-pet", "film-pp", "paper", "mica", "ceramic-c0g"])
      expect(rowOf(name).measured.audible, name).toBe("none");
    expect(Math.abs(rowOf("film-pp").measured.difference)).toBeLessThan(0.03);
  });

  it("does less than the tolerance it is sold with, and less than a Z5U disc's temperature", () => {
    for (const row of answer.caps[0]!.rows)
      expect(Math.abs(row.measured.difference), row.dielectric).toBeLessThan(Math.abs(row.marked.difference));
    const z5u = rowOf("ceramic-z5u");
    expect(Math.abs(z5u.changed.difference)).toBeGreaterThan(Math.abs(z5u.marked.difference));
    expect(z5u.changed.within[0]).toBeCloseTo(0.44 * 0.95 ** 2 - 1, 12);
  });

  it("is looked at in every position with tones from 0 to 10, most with the tone at 0", () => {
    expect(answer.caps[0]!.settings).toBe(11);
    expect(rowOf("film-pet").marked.settings).toMatchObject({ tone: 0 });
  });

  it("is answered first, in a sentence", () => {
    expect(answer.answer).toMatch(
      /^No: at the same measured value nobody hears what the cap is made of \(at most 0\.\d dB\); /,
    );
    expect(answer.answer).toMatch(/what is heard is how far a cap is from the value marked on it\.$/);
    expect(answer.caps[0]!.says).toMatch(/^At the same measured 22 nF polyester film/);
    expect(answer.caps[0]!.says).toContain("polyester film (±10 %) differs by up to");
    expect(answer.caps[0]!.says).toContain("Y5V ceramic (−20/+80 %) differs by up to");
  });

  it("is not heard at all where the control is out of the circuit", () => {
    const { tone, ...rest } = { ...(onePickup() as { parts: Record<string, object> }).parts };
    const out = readBuild(onePickup({ parts: { ...rest, tone: { ...tone, noLoad: true } } }));
    const still = dielectricsTold(
      { ...dielectricsAsked(out), settings: [dielectricsAsked(out).settings.at(-1)!] },
      flatDrive(),
    );
    expect(still.answer).toMatch(/^No: .*here even the tolerance is not heard\.$/);
  });
});

/** The guard written out with the cap at 22 nF and 10 % under, tone at 0; level matched by the K-weighted energy of all bands. */
const NUMPY = `
import sys, json, numpy as np
job = json.load(sys.stdin)
f, k, per = np.array(job["hertz"]), np.array(job["kGain"]), job["per"]
w = 2j*np.pi*f
def bands(farads):
    y = w*110e-12 + 1/250e3 + w*500e-12 + 1e-6 + w*farads
    energy = np.abs(1/(1 + (6000 + w*2.4)*y))**2/per
    loud = 10*np.log10(np.sum(energy*k))
    weighted = np.sum((energy*k).reshape(-1, per), axis=1)
    return 10*np.log10(np.sum(energy.reshape(-1, per), axis=1)) - loud, weighted
(a, wa), (b, wb) = bands(22e-9), bands(22e-9*0.9)
heard = (wa >= 1e-6*wa.max()) | (wb >= 1e-6*wb.max())
d = np.where(heard, b - a, 0)
print(json.dumps(float(d[np.argmax(np.abs(d))])))
`;

describeWith("scipy", "the difference that tolerance makes, held to NumPy", () => {
  it("of polyester film 10 % under its mark is the same within 0.1 dB, its loss being the rest", () => {
    const run = spawnSync("/usr/bin/python3", ["-c", NUMPY], {
      input: JSON.stringify({ hertz: [...SLICES.frequenciesHz], kGain: [...SLICES.kGain], per: SLICES_PER_BAND }),
      encoding: "utf8",
    });
    const wanted = JSON.parse(run.stdout) as number;
    expect(Math.abs(wanted)).toBeGreaterThan(0.5);
    expect(Math.abs(rowOf("film-pp").marked.difference)).toBeLessThan(Math.abs(wanted));
    expect(Math.abs(rowOf("film-pet").marked.difference - wanted)).toBeLessThan(0.1);
  });
});

it("names the setting that differs most as a person names its knobs", () => {
  const build = readBuild({
    presolder: 1,
    plan: {
      layout: "one-pickup",
      pickups: { bridge: "single-medium" },
      volume: "250k",
      tones: [{ pot: "250k", cap: "22n" }],
    },
  });
  const blender = { kind: "pot", resistance: "250k", taper: "linear", label: "Fat knob" };
  const { parts, wires } = build;
  const { tone } = parts;
  const more = readBuild({ presolder: 1, parts: { ...parts, fat: blender, tone: tone! }, wires });
  const settings = [{ ...new Controls(more).atRest, dials: { ...new Controls(more).atRest.dials, fat: 3, tone: 0 } }];
  const { measured } = dielectricsTold({ build: more, caps: ["cap"], settings }, flatDrive()).caps[0]!.rows[0]!;
  expect(measured.label).toBe("tone 0, volume 10, fat knob 3");
});
