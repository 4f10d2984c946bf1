import { partsOfKind } from "../../build-file/parts-of-kind.ts";
import type { Build, Part } from "../../build-file/schema.ts";
import { Wiring } from "../../wiring/nets.ts";

/** What may share a net with a tone cap's leg that is neither hot nor ground: tone tracks, other caps, resistors. */
function isOfTone(part: Part | undefined, local: string): boolean {
  if (part?.kind === "cap" || part?.kind === "resistor") return true;
  return part?.kind === "pot" && part.role === "tone" && /^b?[123]$/.test(local);
}

/** Caps with a leg that meets a tone pot's track and nothing else of the signal's way. */
export function toneCapsOf(build: Build): string[] {
  const { lugs, ...wiring } = nets(build);
  const isTone = (net: number) => {
    const others = lugs.filter((_, index) => wiring.netOfLug[index] === net);
    const isAlone = others.every(({ part, local }) => isOfTone(build.parts[part], local));
    return isAlone && others.some(({ part }) => build.parts[part]?.kind === "pot");
  };
  return partsOfKind(build, "cap").flatMap(([name]) => {
    const legs = lugs.flatMap(({ part }, index) => (part === name ? [wiring.netOfLug[index]!] : []));
    return legs.some(isTone) ? [name] : [];
  });
}

function nets(build: Build) {
  const wiring = new Wiring(build);
  return { lugs: wiring.lugs.lugs, netOfLug: wiring.wiredNets().netOfLug };
}
