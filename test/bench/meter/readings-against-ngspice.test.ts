import { expect, it } from "vitest";
import { meterReadings } from "../../../src/bench/meter/readings.ts";
import { standingReadings } from "../../../src/bench/meter/standing-readings.ts";
import { readBuild } from "../../../src/build-file/read-build.ts";
import { CircuitMaker } from "../../../src/response/circuit.ts";
import { circuits, threeSingles } from "../../fixtures/circuits.ts";
import { netlistOf, operatingPoint } from "../../ngspice.ts";
import { describeWith } from "../../tools.ts";

/**
 * 1 mA through the guard: the operating point's volts × 1000 are ohms. A teraohm stands for each capacitor, since ngspice needs
 * a direct path from every node. Where the jack is shorted the netlist knows no node `out`.
 */
function ngspiceOhms(build: ReturnType<typeof readBuild>, plan: ReturnType<typeof standingReadings>[number]): number {
  const maker = new CircuitMaker(build);
  const { network, outputNode } = maker.circuitIn(plan.settings, { withCableAndLoad: false });
  const cards = netlistOf(
    network,
    outputNode,
    maker.sources.map(() => 0),
  ).map((card) => card.replace(/^C(\S+) (\S+) (\S+) .*$/, "RC$1 $2 $3 1T"));
  if (!cards.some((card) => card.split(" ").includes("out"))) return 0;
  return operatingPoint([...cards, "Imeter 0 out DC 1m"]) * 1000;
}

describeWith("ngspice", "readings at the jack against ngspice's operating point", () => {
  const builds = [
    ...circuits.map(({ name, build }) => ({ name, build })),
    { name: "three singles", build: threeSingles() },
  ];

  it.each(builds)("agree for $name", ({ build: file }) => {
    const build = readBuild(file);
    const { readings } = meterReadings(build);
    const plans = standingReadings(build);
    const atJack = plans.flatMap((plan, index) =>
      plan.between[0] === "jack.tip" && plan.sweep === undefined ? [{ plan, ohms: readings[index]!.ohms! }] : [],
    );
    expect(atJack.length).toBeGreaterThan(1);
    for (const { plan, ohms } of atJack) {
      expect(Math.abs(ngspiceOhms(build, plan) - ohms)).toBeLessThanOrEqual(1e-6 * ohms);
    }
  });
});
