import { expect, it } from "vitest";
import { meterReadings } from "../../../src/bench/meter/readings.ts";
import { standingReadings } from "../../../src/bench/meter/standing-readings.ts";
import { readBuild } from "../../../src/build-file/read-build.ts";
import { CircuitMaker } from "../../../src/response/circuit.ts";
import { circuits, threeSingles } from "../../fixtures/circuits.ts";
import { withIdealPots } from "../../ideal-pots.ts";
import { netlistOf, operatingPoints } from "../../ngspice.ts";
import { describeWith } from "../../tools.ts";

/**
 * 1 mA through the guard: the operating point's volts × 1000 are ohms. A teraohm stands for each capacitor, since ngspice needs
 * a direct path from every node. Where the jack is shorted the netlist knows no node `out`, and a source of 0 V is the short.
 */
function meterCards(build: ReturnType<typeof readBuild>, plan: ReturnType<typeof standingReadings>[number]): string[] {
  const maker = new CircuitMaker(build);
  const { network, outputNode } = maker.circuitIn(plan.settings, { withCableAndLoad: false });
  const cards = netlistOf(
    network,
    outputNode,
    maker.sources.map(() => 0),
  ).map((card) => card.replace(/^C(\S+) (\S+) (\S+) .*$/, "RC$1 $2 $3 1T"));
  const isShorted = !cards.some((card) => card.split(" ").includes("out"));
  return [...cards, ...(isShorted ? ["Vshort out 0 DC 0"] : []), "Imeter 0 out DC 1m"];
}

describeWith("ngspice", "readings at the jack against ngspice's operating point", () => {
  const builds = [
    ...circuits.map(({ name, build }) => ({ name, build })),
    { name: "three singles", build: threeSingles() },
  ];

  it.each(builds)("agree for $name", ({ build: file }) => {
    const build = withIdealPots(readBuild(file));
    const { readings } = meterReadings(build);
    const plans = standingReadings(build);
    const atJack = plans.flatMap((plan, index) =>
      plan.between[0] === "jack.tip" && plan.sweep === undefined ? [{ plan, ohms: readings[index]!.ohms! }] : [],
    );
    expect(atJack.length).toBeGreaterThan(1);
    const volts = operatingPoints(atJack.map(({ plan }) => meterCards(build, plan)));
    for (const [index, { ohms }] of atJack.entries()) {
      expect(Math.abs(volts[index]! * 1000 - ohms)).toBeLessThanOrEqual(1e-6 * ohms);
    }
  });
});
