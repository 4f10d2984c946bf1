import { partsOfKind } from "../../src/build-file/parts-of-kind.ts";
import type { Build } from "../../src/build-file/schema.ts";
import type { Settings } from "../../src/build-file/settings.ts";
import { DisjointSets } from "../../src/disjoint-sets.ts";
import { Wiring } from "../../src/wiring/nets.ts";

type Tree = { coil: string; sign: 1 | -1 } | { op: "+" | "∥"; of: Tree[] };

interface Edge {
  a: number;
  b: number;
  /** Its signal rises from a to b. */
  tree: Tree;
}

function flipped(tree: Tree): Tree {
  if ("coil" in tree) return { coil: tree.coil, sign: tree.sign === 1 ? -1 : 1 };
  return { op: tree.op, of: tree.of.map(flipped) };
}

function joined(op: "+" | "∥", trees: Tree[]): Tree {
  return { op, of: trees.flatMap((tree) => ("op" in tree && tree.op === op ? tree.of : [tree])) };
}

function printed(tree: Tree, nested = false): string {
  if ("coil" in tree) return `${tree.sign === 1 ? "" : "-"}${tree.coil}`;
  const text = tree.of
    .map((part) => printed(part, true))
    .sort((a, b) => a.replace(/[-(]/g, "").localeCompare(b.replace(/[-(]/g, "")))
    .join(` ${tree.op} `);
  return nested ? `(${text})` : text;
}

/** Series-parallel reduction to what lies between two nodes; text "none" where nothing does. */
function reduced(edges: Edge[], sleeve: number, tip: number): string {
  let live = edges.filter((edge) => edge.a !== edge.b);
  for (;;) {
    const before = live.length;
    live = withoutDangling(mergedParallel(mergedSeries(live, [sleeve, tip])), [sleeve, tip]);
    if (live.length === before) break;
  }
  if (live.length === 0) return "none";
  if (live.length > 1) return `not series-parallel: ${live.map((edge) => printed(edge.tree)).join(", ")}`;
  const [edge] = live;
  return printed(edge!.b === tip ? edge!.tree : flipped(edge!.tree));
}

const at = (edges: Edge[], node: number) => edges.filter((edge) => edge.a === node || edge.b === node);

function mergedSeries(edges: Edge[], terminals: number[]): Edge[] {
  for (const node of new Set(edges.flatMap(({ a, b }) => [a, b]))) {
    const met = at(edges, node);
    if (terminals.includes(node) || met.length !== 2) continue;
    const [first, second] = met as [Edge, Edge];
    const into = first.b === node ? first : { a: first.b, b: first.a, tree: flipped(first.tree) };
    const outOf = second.a === node ? second : { a: second.b, b: second.a, tree: flipped(second.tree) };
    const merged = { a: into.a, b: outOf.b, tree: joined("+", [into.tree, outOf.tree]) };
    return [...edges.filter((edge) => edge !== first && edge !== second), merged].filter((edge) => edge.a !== edge.b);
  }
  return edges;
}

function mergedParallel(edges: Edge[]): Edge[] {
  for (const first of edges) {
    const second = edges.find(
      (edge) =>
        edge !== first && ((edge.a === first.a && edge.b === first.b) || (edge.a === first.b && edge.b === first.a)),
    );
    if (!second) continue;
    const turned = second.a === first.a ? second.tree : flipped(second.tree);
    return [
      ...edges.filter((edge) => edge !== first && edge !== second),
      { ...first, tree: joined("∥", [first.tree, turned]) },
    ];
  }
  return edges;
}

function withoutDangling(edges: Edge[], terminals: number[]): Edge[] {
  return edges.filter(({ a, b }) => [a, b].every((node) => terminals.includes(node) || at(edges, node).length > 1));
}

/**
 * What stands between the jack's tip and sleeve with every volume at 10, in words: coils joined by "+" in series and "∥" in
 * parallel, a minus before one that opposes; and the tone pots whose far end is grounded through a cap.
 */
export function topologyOf(build: Build, settings: Settings): { signal: string; tones: string[] } {
  const wiring = new Wiring(build);
  const nets = wiring.netsIn(settings);
  const sets = new DisjointSets(nets.count);
  const netOf = (lug: string) => nets.netOfLug[wiring.lugs.indexOf(lug)]!;
  for (const [name, pot] of partsOfKind(build, "pot"))
    if (pot.role === "volume") sets.join(netOf(`${name}.2`), netOf(`${name}.3`));
  const node = (lug: string) => sets.find(netOf(lug));
  const edges = partsOfKind(build, "pickup").flatMap(([name, pickup]): Edge[] => {
    const coils = Object.entries(pickup.coils);
    if (coils.length === 2 && pickup.conductors !== 2)
      return coils.map(([coil, { winding, magnet }]) => ({
        a: node(`${name}.${coil}.start`),
        b: node(`${name}.${coil}.finish`),
        tree: { coil: `${name}.${coil}`, sign: (winding === "forward") === (magnet === "north") ? 1 : -1 },
      }));
    const [, { winding, magnet }] = coils[0]!;
    const sign = (winding === "forward") === (magnet === "north") ? 1 : -1;
    return [{ a: node(`${name}.ground`), b: node(`${name}.hot`), tree: { coil: name, sign } }];
  });
  const [tip, sleeve] = [node("jack.tip"), node("jack.sleeve")];
  const tones = partsOfKind(build, "pot")
    .filter(([name, pot]) => pot.role === "tone" && node(`${name}.1`) === tip)
    .filter(([name]) =>
      partsOfKind(build, "cap").some(([cap]) => node(`${cap}.a`) === node(`${name}.2`) && node(`${cap}.b`) === sleeve),
    )
    .map(([name]) => name);
  return { signal: tip === sleeve ? "shorted" : reduced(edges, sleeve, tip), tones };
}
