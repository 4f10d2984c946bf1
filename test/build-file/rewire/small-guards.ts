import fc from "fast-check";

/** A wire of a small guard, with the ends that grow from their lugs. */
export interface SmallWire {
  readonly lugs: readonly [string, string];
  readonly grown: readonly [boolean, boolean];
  readonly how: string;
}

export interface SmallGuard {
  readonly parts: Readonly<Record<string, object>>;
  readonly wires: readonly SmallWire[];
}

const FIXED = {
  pickup: { kind: "pickup", coils: { coil: { resistance: "6k", inductance: "2.4H" } } },
  pot: { kind: "pot", role: "volume", resistance: "250k" },
  jack: { kind: "jack" },
};
const cap = (capacitance: string) => ({ kind: "cap", capacitance });
const LUGS: Readonly<Record<string, readonly string[]>> = {
  pickup: ["pickup.hot", "pickup.ground"],
  pot: ["pot.1", "pot.2", "pot.3", "pot.case"],
  jack: ["jack.tip", "jack.sleeve"],
  cap: ["cap.a", "cap.b"],
};

export const lugsOf = ({ parts }: Pick<SmallGuard, "parts">): string[] =>
  Object.keys(parts).flatMap((name) => LUGS[name]!);

const isPart = (lug: string, part: string) => lug.startsWith(`${part}.`);

/** Wires drawn between the lugs of the parts, each made as the first draw says: on a leg or lead that is free, bent, or cut. */
function wired(parts: SmallGuard["parts"], draws: readonly (readonly [number, number, boolean])[]): SmallGuard {
  const lugs = lugsOf({ parts });
  const used = new Set<string>();
  const wires = draws.flatMap(([first, second, plain]): SmallWire[] => {
    const [a, b] = [lugs[first % lugs.length]!, lugs[second % lugs.length]!];
    if (a === b) return [];
    if (isPart(a, "pot") && isPart(b, "pot") && (a.endsWith("case") || b.endsWith("case")))
      return [{ lugs: [a, b], grown: [!a.endsWith("case"), !b.endsWith("case")], how: "bent lug" }];
    for (const [part, how] of [["cap", "leg"] as const, ["pickup", "lead"] as const]) {
      const grown = [a, b].map((lug) => isPart(lug, part) && !used.has(lug)) as [boolean, boolean];
      if (plain || !(grown[0] || grown[1])) continue;
      for (const [end, lug] of [a, b].entries()) if (grown[end]) used.add(lug);
      return [{ lugs: [a, b], grown, how }];
    }
    return [{ lugs: [a, b], grown: [false, false], how: "wire" }];
  });
  return { parts, wires };
}

function guardOf(most: number): fc.Arbitrary<SmallGuard> {
  const draw = fc.tuple(fc.nat(40), fc.nat(40), fc.boolean());
  return fc
    .tuple(fc.constantFrom({}, { cap: cap("22n") }, { cap: cap("47n") }), fc.array(draw, { maxLength: most }))
    .map(([more, draws]) => wired({ ...FIXED, ...more }, draws));
}

/** Two guards, of which the second is at times the first with a few wires changed. @param most wires of each */
export function guardPairs(most: number): fc.Arbitrary<{ from: SmallGuard; to: SmallGuard }> {
  const apart = fc.record({ from: guardOf(most), to: guardOf(most) });
  const near = fc.tuple(guardOf(most - 2), guardOf(2), fc.nat(most)).map(([from, added, gone]) => {
    const used = new Set(from.wires.flatMap(({ lugs, grown }) => lugs.filter((_, end) => grown[end])));
    const more = added.wires.filter(
      ({ lugs, grown }) =>
        lugs.every((lug) => lugsOf(from).includes(lug)) && !lugs.some((lug, end) => grown[end] && used.has(lug)),
    );
    return { from, to: { parts: from.parts, wires: [...from.wires.filter((_, index) => index !== gone), ...more] } };
  });
  return fc.oneof(apart, near);
}

export function buildFileOf({ parts, wires }: SmallGuard): object {
  return { presolder: 1, parts, wires: wires.map(({ lugs: [from, to], how }) => ({ from, to, how })) };
}
