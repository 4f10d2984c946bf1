import { LugTable } from "../../build-file/lugs.ts";
import { partsOfKind } from "../../build-file/parts-of-kind.ts";
import type { Build } from "../../build-file/schema.ts";
import { FRAME_LUG } from "../../build-file/switch-types.ts";
import { Wiring } from "../../wiring/nets.ts";
import type { AuditContext } from "./context.ts";
import { type Finding, finding } from "./finding.ts";

/** Lugs that belong on ground in any guard: pot cases, frames, shields, and terminals for claw, shield and ground. */
export function earthyLugs(build: Build): string[] {
  return new LugTable(build.parts).lugs
    .filter(({ part, local }) => {
      const owner = build.parts[part]!;
      if (owner.kind === "terminal") return owner.role !== undefined && owner.role !== "other";
      if (owner.kind === "switch") return local === FRAME_LUG;
      return (owner.kind === "pot" && local === "case") || (owner.kind === "pickup" && local === "shield");
    })
    .map((lug) => lug.name);
}

function swapLugs(build: Build, a: string, b: string): Build {
  const swap = (lug: string) => (lug === a ? b : lug === b ? a : lug);
  return { ...build, wires: build.wires.map((wire) => ({ ...wire, from: swap(wire.from), to: swap(wire.to) })) };
}

export interface JackSwap {
  readonly finding: Finding;
  /** The build with tip and sleeve put right, so that one swap is not reported as a dozen faults. */
  readonly mended: Build;
}

/**
 * Tells a swapped jack by what hangs on its lugs: more of the guard's metal on the tip than on the sleeve, by wires alone.
 * Without metal anywhere a swap is no fault but a turn of phase.
 */
export function findJackSwap(build: Build): JackSwap | undefined {
  const jack = partsOfKind(build, "jack")[0]![0];
  const [tip, sleeve] = [`${jack}.tip`, `${jack}.sleeve`];
  const wiring = new Wiring(build);
  const { netOfLug } = wiring.wiredNets();
  const net = (lug: string) => netOfLug[wiring.lugs.indexOf(lug)];
  const metal = earthyLugs(build);
  const onTip = metal.filter((lug) => net(lug) === net(tip));
  const onSleeve = metal.filter((lug) => net(lug) === net(sleeve));
  if (net(tip) === net(sleeve) || onTip.length <= onSleeve.length) return undefined;
  return {
    mended: swapLugs(build, tip, sleeve),
    finding: finding({
      code: "jack-swapped",
      lugs: [tip, sleeve, ...onTip],
      message: `Hot and ground are swapped at the jack: ${onTip.join(", ")} ${onTip.length > 1 ? "are" : "is"} joined to the tip. Sound and jack reading stay the same; it buzzes, and more when metal is touched.`,
      remedy:
        "Swap the two wires at the jack. Then measure from the strings to the sleeve: about 0 Ω. Strings to tip must read the pickup, not 0 Ω.",
    }),
  };
}

/** Tip or sleeve with nothing on it. */
export function jackUnwired(context: AuditContext): Finding[] {
  const bare = ["tip", "sleeve"]
    .map((local) => `${context.jack}.${local}`)
    .filter((lug) => context.neighbours(lug).length === 0);
  if (bare.length === 0) return [];
  return [
    finding({
      code: "jack-unwired",
      lugs: bare,
      message: `${bare.join(" and ")} ${bare.length > 1 ? "have" : "has"} no wire, so nothing leaves the guitar.`,
      remedy: "Run the output to the tip and the guard's ground to the sleeve.",
    }),
  ];
}
