import { hasCoilLeads } from "../../build-file/lug-names.ts";
import { partsOfKind } from "../../build-file/parts-of-kind.ts";
import type { Build } from "../../build-file/schema.ts";
import { Wiring } from "../../wiring/nets.ts";
import type { AuditContext } from "./context.ts";
import { type Finding, finding } from "./finding.ts";

/**
 * Pickups of two leads whose metal is on ground by itself while their ground lead goes to a switch or to the hot. As they are sold a
 * cover or baseplate is tied to that lead (common practice, no source), which would put it on ground there.
 */
export function pickupsToPart(build: Build): string[] {
  const wiring = new Wiring(build);
  const { netOfLug } = wiring.wiredNets();
  const [jack] = partsOfKind(build, "jack")[0]!;
  const netOf = (lug: string) => netOfLug[wiring.lugs.indexOf(lug)];
  const ground = netOf(`${jack}.sleeve`);
  const isWired = (lug: string) => build.wires.some(({ from, to }) => from === lug || to === lug);
  return partsOfKind(build, "pickup").flatMap(([name, pickup]) => {
    const hasMetal = pickup.metal === "cover" || pickup.metal === "baseplate";
    if (!hasMetal || hasCoilLeads(pickup)) return [];
    const [lead, metal] = [`${name}.ground`, `${name}.shield`];
    return isWired(lead) && netOf(lead) !== ground && netOf(metal) === ground ? [name] : [];
  });
}

/** What no drawing shows: the tie inside a pickup that its wiring here does not bear. */
export function metalToPart({ build }: AuditContext): Finding[] {
  return pickupsToPart(build).map((name) => {
    const part = build.parts[name];
    const metal = part?.kind === "pickup" ? part.metal : "";
    return finding({
      code: "metal-to-part",
      lugs: [`${name}.ground`, `${name}.shield`],
      message: `The ground lead of ${name} goes to a switch or to the hot here: tied to that lead, as such pickups are sold, its ${metal} would ground it.`,
      remedy: `Part the ${metal} from the lead before it is soldered, and run it to ground on its own.`,
    });
  });
}
