import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Coil } from "../src/build-file/schema.ts";
import { DisjointSets } from "../src/disjoint-sets.ts";
import type { Network } from "../src/network/elements.ts";

/** One complex value per frequency. */
export interface AcResult {
  readonly frequenciesHz: Float64Array;
  readonly re: Float64Array;
  readonly im: Float64Array;
}

const DIGITS = 15;

/**
 * What an analysis of each netlist gives for the voltage of node `out`, in `wrdata`'s text. One process for all of them:
 * ngspice takes twenty times as long to start as to solve a guard.
 */
function analyses(netlists: readonly (readonly string[])[], analysis: string): string[] {
  const directory = mkdtempSync(join(tmpdir(), "presolder-ngspice-"));
  const file = (name: string) => join(directory, name);
  try {
    const steps = netlists.flatMap((cards, index) => {
      writeFileSync(file(`${index}.cir`), [`netlist ${index}`, ...cards, ".end", ""].join("\n"));
      return [
        `source ${file(`${index}.cir`)}`,
        analysis,
        `wrdata ${file(`${index}.txt`)} v(out)`,
        "destroy all",
        "remcirc",
      ];
    });
    const main = ["all netlists", ".control", `set numdgt=${DIGITS}`, ...steps, "quit", ".endc", ".end", ""];
    writeFileSync(file("main.cir"), main.join("\n"));
    const result = spawnSync("ngspice", ["-b", file("main.cir")], { encoding: "utf8", cwd: directory });
    try {
      return netlists.map((_, index) => readFileSync(file(`${index}.txt`), "utf8"));
    } catch {
      throw new Error(`ngspice gave no result:\n${result.stdout}\n${result.stderr}`);
    }
  } finally {
    rmSync(directory, { recursive: true, force: true });
  }
}

function parseAc(text: string): AcResult {
  const rows = text
    .trim()
    .split("\n")
    .map((line) => line.trim().split(/\s+/).map(Number));
  const column = (index: number) => Float64Array.from(rows, (row) => row[index]!);
  return { frequenciesHz: column(0), re: column(1), im: column(2) };
}

/**
 * AC analysis by ngspice, 20 Hz – 20 kHz, of a netlist that drives one or more sources and has a node `out`.
 * @param cards element lines without title and `.end`
 */
export function acSweep(cards: readonly string[], pointsPerDecade = 20): AcResult {
  return acSweeps([cards], pointsPerDecade)[0]!;
}

/** Several netlists in one process; see `acSweep`. */
export function acSweeps(
  netlists: readonly (readonly string[])[],
  pointsPerDecade = 20,
  toHz: number = 20_000,
): AcResult[] {
  return analyses(netlists, `ac dec ${pointsPerDecade} 20 ${toHz}`).map(parseAc);
}

/** DC voltage of node `out` at each netlist's operating point. */
export function operatingPoints(netlists: readonly (readonly string[])[]): number[] {
  return analyses(netlists, "op").map((text) => Number(text.trim().split(/\s+/)[1]));
}

/**
 * A network of ours as an ngspice netlist; each source is an AC voltage of the given amplitude. Nodes that a 0 Ω
 * resistor joins are given one name, since loops of ideal joints have no solution in ngspice.
 */
export function netlistOf(network: Network, output: number, amplitudes: readonly number[]): string[] {
  const joints = new DisjointSets(network.nodeCount);
  for (const element of network.elements)
    if (element.kind === "resistor" && element.ohms === 0) joints.join(element.a, element.b);
  const name = (node: number) => {
    const joint = joints.find(node);
    return joint === 0 ? "0" : joint === joints.find(output) ? "out" : `n${joint}`;
  };
  const cards = network.elements.flatMap((element, index) => {
    const [a, b] = [name(element.a), name(element.b)];
    if (element.kind === "resistor") {
      return a === b ? [] : [`R${index} ${a} ${b} ${element.ohms}`];
    }
    if (element.kind === "capacitor") return a === b ? [] : [`C${index} ${a} ${b} ${element.farads}`];
    const amplitude = element.source === undefined ? 0 : amplitudes[element.source]!;
    const cardList: string[] = [];
    let at = a;
    const next = (last: boolean) => (last ? b : `${a}_${index}_${cardList.length}`);
    if (element.source !== undefined) {
      const to = next(element.ohms === 0 && element.henries === 0);
      cardList.push(`V${index} ${to} ${at} DC 0 AC ${amplitude}`);
      at = to;
    }
    if (element.ohms > 0) {
      const to = next(element.henries === 0);
      cardList.push(`R${index} ${at} ${to} ${element.ohms}`);
      at = to;
    }
    if (element.henries > 0) cardList.push(`L${index} ${at} ${b} ${element.henries}`);
    return cardList;
  });
  const mutuals = network.mutuals.map(({ first, second, henries }, index) => {
    const [one, two] = [network.elements[first]!, network.elements[second]!];
    if (one.kind !== "branch" || two.kind !== "branch") throw new TypeError("a mutual inductance joins branches");
    return `K${index} L${first} L${second} ${henries / Math.sqrt(one.henries * two.henries)}`;
  });
  return [...cards, ...mutuals, ...floatingTies(network).map((node) => `Rtie${node} ${name(node)} 0 1`)];
}

/** A source's card behind the metal about its coil: every metal a network of its own, read off by a source that loads nothing. */
export function behindMetal(card: string, shielding: Coil["shielding"]): string[] {
  const [name, to, at, ...rest] = card.split(" ");
  const metals = [shielding ?? []].flat();
  const stage = (index: number) => `${name}_m${index}`;
  if (metals.length === 0) return [card];
  return [
    `${name} ${stage(0)} 0 ${rest.join(" ")}`,
    ...metals.flatMap((metal, index) => {
      const low = "depth" in metal ? 10 ** (-metal.depth / 20) : 0;
      const poleHz = "depth" in metal ? metal.shelf * Math.sqrt(low) : metal.pole;
      const [own, out, foot] = [`${name}_${index}`, `${stage(index)}out`, `${stage(index)}${low > 0 ? "foot" : "out"}`];
      return [
        `R${own} ${stage(index)} ${out} ${1000 * (1 - low)}`,
        ...(low > 0 ? [`Rs${own} ${out} ${foot} ${1000 * low}`] : []),
        `C${own} ${foot} 0 ${1 / (2 * Math.PI * poleHz * 1000)}`,
        `E${own} ${stage(index + 1)} 0 ${out} 0 1`,
      ];
    }),
    `E${name} ${to} ${at} ${stage(metals.length)} 0 1`,
  ];
}

/** One node of every part of the network that hangs on nothing: tied to ground it carries no current, and ngspice needs it. */
function floatingTies(network: Network): number[] {
  const parts = new DisjointSets(network.nodeCount);
  for (const element of network.elements) parts.join(element.a, element.b);
  const used = new Set(network.elements.flatMap((element) => [element.a, element.b]));
  return [...used].filter((node) => node !== 0 && parts.find(node) === node);
}
