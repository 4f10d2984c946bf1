import { partsOfKind } from "../../build-file/parts-of-kind.ts";
import type { Build } from "../../build-file/schema.ts";

type Pair = readonly [string, string];

const partOf = (lug: string) => lug.split(".")[0]!;
const isTrack = (lug: string) => /\.b?[123]$/.test(lug);

function tonesOf(build: Build): Set<string> {
  return new Set(partsOfKind(build, "pot").flatMap(([name, { role }]) => (role === "tone" ? [name] : [])));
}

/** The two tones among parts, where there are just two. */
function pairIn(parts: readonly string[], tones: ReadonlySet<string>): Pair | undefined {
  const [a, b, ...more] = [...new Set(parts)].filter((part) => tones.has(part));
  return a === undefined || b === undefined || more.length > 0 ? undefined : [a, b];
}

/** Caps whose legs reach track lugs of two tones, with the two. */
export function sharedCaps(build: Build): (readonly [cap: string, tones: Pair])[] {
  const tones = tonesOf(build);
  return partsOfKind(build, "cap").flatMap(([cap]) => {
    const reached = build.wires.flatMap(({ from, to }) => {
      if (partOf(from) === cap && isTrack(to)) return [partOf(to)];
      return partOf(to) === cap && isTrack(from) ? [partOf(from)] : [];
    });
    const pair = pairIn(reached, tones);
    return pair ? [[cap, pair] as const] : [];
  });
}

/** Tones that share a cap, or whose tracks a wire or a leg ties, each with the other. */
export function facingTones(build: Build): ReadonlyMap<string, string> {
  const tones = tonesOf(build);
  const tied = build.wires.flatMap(({ from, to }) => {
    const pair = isTrack(from) && isTrack(to) ? pairIn([partOf(from), partOf(to)], tones) : undefined;
    return pair ? [pair] : [];
  });
  const pairs = [...sharedCaps(build).map(([, pair]) => pair), ...tied];
  return new Map(pairs.flatMap(([a, b]) => [[a, b] as const, [b, a] as const]));
}
