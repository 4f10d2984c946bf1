import { DisjointSets } from "../../disjoint-sets.ts";
import { LugTable } from "../lugs.ts";
import { type Build, type BuildInput, longFormSchema, type PartOf } from "../schema.ts";

/** A long form, read, with the nets that its wires alone make. */
export interface Guard {
  readonly written: BuildInput;
  readonly build: Build;
  readonly table: LugTable;
  /** Net of each lug, by its index in the table. */
  readonly netOf: Int32Array;
  readonly netCount: number;
}

type Kind = Build["parts"][string]["kind"];

/** The guard of a long form, or why there is none: one plain sentence. */
export function guardOf(written: BuildInput): Guard | string {
  const read = longFormSchema.safeParse(written);
  if (!read.success) return "The build file cannot be read.";
  const build = read.data;
  const table = new LugTable(build.parts);
  const sets = new DisjointSets(table.lugs.length);
  for (const { from, to } of build.wires) {
    const [a, b] = [table.find(from), table.find(to)];
    if (a === undefined || b === undefined)
      return `A wire goes to ${a === undefined ? from : to}, and there is no such lug.`;
    sets.join(a, b);
  }
  const { labels, count } = sets.labels();
  return { written, build, table, ...withTiedTopsFree(build, table, labels, count) };
}

/** A tone whose lug 3 is tied to its wiper is the same resistor without the tie, so the tie is passed over. */
function withTiedTopsFree(
  build: Build,
  table: LugTable,
  labels: Int32Array,
  count: number,
): Pick<Guard, "netOf" | "netCount"> {
  const netOf = labels.slice();
  let netCount = count;
  for (const [name, part] of Object.entries(build.parts)) {
    if (part.kind !== "pot" || part.role !== "tone" || part.noLoad) continue;
    const [wiper, top] = [table.indexOf(`${name}.2`), table.indexOf(`${name}.3`)];
    if (netOf[wiper] === netOf[top]) netOf[top] = netCount++;
  }
  return { netOf, netCount };
}

/** The names of a guard's parts of one kind, in the order in which they stand. */
export function namesOf(guard: Guard, kind: Kind): string[] {
  return Object.keys(guard.build.parts).filter((name) => guard.build.parts[name]!.kind === kind);
}

export function partOf<K extends Kind>(guard: Guard, name: string, kind: K): PartOf<K> {
  const part = guard.build.parts[name];
  if (part?.kind !== kind) throw new RangeError(`${name} is no ${kind}`);
  return part as PartOf<K>;
}

/** The net of a lug by its name; −1 where there is no such lug. */
export function netAt(guard: Guard, lug: string): number {
  const index = guard.table.find(lug);
  return index === undefined ? -1 : guard.netOf[index]!;
}
