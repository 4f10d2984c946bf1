import { describe, expect, test } from "vitest";
import { decodeWav } from "../../../src/audio/wav-decode.ts";
import { SILENCE_DB } from "../../../src/decibels.ts";
import { logSpaced } from "../../../src/response/frequencies.ts";
import { casesOf } from "../../effort.ts";
import { hssWithBleed, threeSingles } from "../../fixtures/circuits.ts";
import { backwardVolumes, cancellingCoils } from "../../fixtures/silent-guards.ts";
import { plausibleGuard } from "../../response/exact/plausible-guard.ts";
import { useService } from "../service.ts";

type Raw = Record<string, number>;
type Sweep = Record<string, number[]>;
type Curve = Record<"magnitude" | "phase", number[]> & Record<string, unknown>;

/** Two of them, so that one may have answered much and the other nothing. */
const [used, other] = [useService(), useService()];

/** More points than are computed at once where they are asked for: a worker's job. */
const LONG = Array.from(logSpaced(20, 96_000, 1100));
/** As few as do not show how the phase turns between them; the first is the same, from which it is counted. */
const FEW = LONG.filter((_, i) => i % 100 === 0);
const MIDDLING = LONG.filter((_, i) => i % 4 === 0);

async function answer(service: typeof used, url: string, payload?: object) {
  const reply = await service.app.inject(payload ? { method: "POST", url, payload } : { url });
  expect(reply.statusCode, reply.body.slice(0, 300)).toBe(200);
  return reply;
}

async function curvesOf(service: typeof used, payload: object): Promise<Curve[]> {
  return (await answer(service, "/api/response", payload)).json().curves;
}

/** What an answer says beside its lists. */
function figuresOf({ magnitude: _, phase: __, sources: ___, ...figures }: Curve) {
  return figures;
}

/** Of a list's values those of another list, of which it has every one. */
function some(values: number[], frequencies: number[]): number[] {
  return frequencies.map((hertz) => values[LONG.indexOf(hertz)]!);
}

const GUARDS: [name: string, build: object, settings: Raw, sweep: Sweep][] = [
  [
    "shorted coils",
    backwardVolumes(),
    { neckVolume: 0, bridgeVolume: 0 },
    { neckVolume: [10, 0], bridgeVolume: [0, 4] },
  ],
  ["cancelling coils", cancellingCoils(), { volume: 7, tone: 3 }, { volume: [10, 7, 0], tone: [3, 10] }],
  ["three single coils", threeSingles(), { lever: 2, tone: 3 }, { lever: [1, 2, 5], tone: [0, 3, 10] }],
  ["a humbucker and a treble bleed", hssWithBleed(), { lever: 4, tone: 7 }, { lever: [4, 1], tone: [0, 7] }],
  ["any guard", plausibleGuard(3), {}, { volume: [10, 5, 0] }],
  ["another", plausibleGuard(22), {}, { volume: [10, 5, 0] }],
];
const SILENT = ["shorted coils", "cancelling coils"];

describe.each(casesOf(GUARDS, 3))(
  "%s: every digit is the same however it is asked for",
  (name, build, settings, sweep) => {
    const at = { build, settings, frequencies: LONG, sources: true };

    test("alone and in a sweep, by a worker and at once, fresh and kept, over any list of frequencies", async () => {
      const [reference] = (await curvesOf(used, at)) as [Curve];
      const all = await curvesOf(used, { ...at, sweep });
      const inSweep = all.find((curve) => JSON.stringify(curve.settings) === JSON.stringify(reference.settings));
      expect(inSweep).toEqual(reference);
      for (const service of [used, other, used, other])
        for (const list of [MIDDLING, FEW]) {
          const [curve] = (await curvesOf(service, { build, settings, frequencies: list })) as [Curve];
          expect(figuresOf(curve)).toEqual(figuresOf(reference));
          expect(curve.magnitude).toEqual(some(reference.magnitude, list));
          expect(curve.phase).toEqual(some(reference.phase, list));
        }
      if (!SILENT.includes(name)) return;
      expect(new Set(reference.magnitude)).toEqual(new Set([SILENCE_DB]));
      expect(new Set(reference.phase)).toEqual(new Set([0]));
      expect([reference.peak, reference.cutoff]).toEqual([null, null]);
    });

    test("by a link, and heard", async () => {
      const { code } = (await answer(used, "/api/link", { build })).json();
      const { build: linked } = (await answer(other, `/api/link/${code}`)).json();
      const few = { settings, frequencies: FEW };
      expect(await curvesOf(other, { build: linked, ...few })).toEqual(await curvesOf(used, { build, ...few }));
      const query = new URLSearchParams({ build: code, signal: "click", encoding: "float32" });
      for (const [control, position] of Object.entries(settings)) query.set(control, `${position}`);
      const got = await answer(other, `/api/preview.wav?${query}`);
      const sound = { signal: "click", encoding: "float32" };
      const posted = await answer(used, "/api/preview", { build, settings, ...sound });
      expect(got.rawPayload.equals(posted.rawPayload)).toBe(true);
      const isSilent = decodeWav(got.rawPayload).channels.every((samples) => samples.every((sample) => sample === 0));
      expect(isSilent).toBe(SILENT.includes(name));
    });
  },
);
