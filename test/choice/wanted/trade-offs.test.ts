import { describe, expect, test } from "vitest";
import { PLAN_PRESETS } from "../../../src/build-file/plans/presets.ts";
import { flatDrive } from "../../../src/choice/drive.ts";
import { parseWishes } from "../../../src/choice/wanted/parse-wishes.ts";
import { tradeOffsOf } from "../../../src/choice/wanted/trade-offs.ts";
import { searchWanted } from "../../../src/choice/wanted/wanted.ts";

function searched(text: string, ids: readonly string[]) {
  return searchWanted({
    wishes: parseWishes(text).wishes,
    values: { volume: [250e3, 500e3], tone: [250e3, 500e3], cap: [22e-9], bleed: [null] },
    surroundings: { cable: { length: "3m", capacitance: "100p" } },
    driveOf: () => flatDrive(),
    starts: PLAN_PRESETS.filter(({ id }) => ids.includes(id)).map(({ title, plan }) => ({
      from: title,
      plan,
      changes: [],
    })),
    pickups: { neck: ["single-vintage"], middle: ["single-vintage-rwrp"] },
    steps: false,
  });
}

describe("wishes that the best guard misses", () => {
  test("that no sound meets are told with the nearest, and what that gives up", () => {
    const { ranked, ledger, ...looked } = searched("glassy and dark 4", ["singles-neck-middle"]);
    const [tradeOff] = tradeOffsOf(ranked[0]!, ledger, looked);
    expect(tradeOff).toMatchObject({ wish: 0, met: false });
    expect(tradeOff!.text).toMatch(
      /^None of the \d+ guards tried meets glassy and dark in position 4; the nearest of them comes to cutoff/,
    );
  });

  test("that another guard meets name what it gives up", () => {
    // A single coil at the bridge hums, and the humbucker that does not is not as bright.
    const { ranked, ledger, ...looked } = searched("bright and biting 1, hum-free 1 , hum-free bridge, loud 3", [
      "singles-neck-middle",
      "hss-automatic-split",
    ]);
    const told = tradeOffsOf(ranked[0]!, ledger, looked);
    const missed = ranked[0]!.outcome.wishes.flatMap(({ met }, index) => (met ? [] : [index]));
    expect(missed.length).toBeGreaterThan(0);
    expect(told.map(({ wish }) => wish)).toEqual(missed);
    for (const { by, wish, met } of told) expect(by.outcome.wishes[wish]!.met).toBe(met);
  });

  test("are told with the doubt that stays where not everything was tried, and without where it was", () => {
    const { ranked, ledger, ...looked } = searched("glassy and dark 4", ["singles-neck-middle"]);
    const text = (exhaustive: boolean) => tradeOffsOf(ranked[0]!, ledger, { ...looked, exhaustive })[0]!.text;
    expect(text(false)).toMatch(/One that was not tried may come nearer\.$/);
    expect(text(true)).not.toContain("not tried");
  });

  test("there is nothing to tell where all are met", () => {
    const { ranked, ledger, ...looked } = searched("hum-free 4", ["singles-neck-middle"]);
    expect(ranked[0]!.outcome.cost).toBe(0);
    expect(tradeOffsOf(ranked[0]!, ledger, looked)).toEqual([]);
  });
});
