import { trackLugs } from "../../../build-file/lug-names.ts";
import { showQuantity } from "../../../build-file/show-quantity.ts";
import type { AuditContext } from "../context.ts";
import { type Finding, finding } from "../finding.ts";
import { likelyValue } from "./usual-value.ts";

interface Use {
  readonly what: string;
  readonly usual: string;
  readonly minFarads: number;
  readonly maxFarads: number;
  readonly usualFarads: readonly [low: number, high: number];
}

/** Customary values, with as much beyond them as anybody wires on purpose (common practice, no source). */
const TONE: Use = {
  what: "a tone cap",
  usual: "10 to 100 nF",
  minFarads: 1e-9,
  maxFarads: 0.2e-6,
  usualFarads: [10e-9, 100e-9],
};
const TREBLE_BLEED: Use = {
  what: "a treble bleed cap",
  usual: "470 pF to 2 nF",
  minFarads: 50e-12,
  maxFarads: 8e-9,
  usualFarads: [470e-12, 2e-9],
};

function inUnits(farads: number): string {
  return showQuantity(farads, "capacitance", 3);
}

const OTHER_END = { a: "b", b: "a" } as const;

/** Whether the net of a cap's end holds a tone pot's lug and caps or other tones besides, and nothing that makes it a hot or ground. */
function meetsToneAlone(context: AuditContext, end: string): boolean {
  const others = context.neighbours(end);
  const isTone = (part: string) => {
    const owner = context.build.parts[part];
    return owner?.kind === "pot" && owner.role === "tone";
  };
  const allowed = others.every(({ part, local }) => {
    const kind = context.build.parts[part]?.kind;
    return kind === "cap" || kind === "resistor" || (isTone(part) && /^[123]$/.test(local));
  });
  return allowed && others.some(({ part }) => isTone(part)) && !context.isWiredToGround(end);
}

/** Nets reached from a cap's end, through at most one resistor in series with it alone. */
function farNets(context: AuditContext, end: string): Set<number> {
  const net = (lug: string) => context.wired.netOfLug[context.index(lug)]!;
  const nets = new Set([net(end)]);
  const others = context.neighbours(end);
  const [only] = others;
  if (others.length === 1 && only && context.build.parts[only.part]?.kind === "resistor")
    nets.add(net(`${only.part}.${OTHER_END[only.local as "a" | "b"]}`));
  return nets;
}

/** Whether a cap bridges part of a volume's track that does not touch ground. */
function bridgesVolume(context: AuditContext, cap: string): boolean {
  const [a, b] = [farNets(context, `${cap}.a`), farNets(context, `${cap}.b`)];
  const net = (lug: string): number => context.wired.netOfLug[context.index(lug)]!;
  return context.controls.potsWithRole("volume").some((volume) => {
    const [one, wiper, three] = trackLugs(volume);
    return [one, three].some((outer) => {
      if (context.isWiredToGround(outer) || context.isWiredToGround(wiper) || net(outer) === net(wiper)) return false;
      return (a.has(net(outer)) && b.has(net(wiper))) || (b.has(net(outer)) && a.has(net(wiper)));
    });
  });
}

function useOf(context: AuditContext, cap: string): Use | undefined {
  if (bridgesVolume(context, cap)) return TREBLE_BLEED;
  return [`${cap}.a`, `${cap}.b`].some((end) => meetsToneAlone(context, end)) ? TONE : undefined;
}

/** Tone and treble bleed caps whose value looks like a slip. */
export function unusualCaps(context: AuditContext): Finding[] {
  return context.partsOf("cap").flatMap(([name, { capacitance }]) => {
    const use = useOf(context, name);
    if (!use || (capacitance >= use.minFarads && capacitance <= use.maxFarads)) return [];
    return finding({
      code: "cap-value-unusual",
      lugs: [`${name}.a`, `${name}.b`],
      message: `${name} is ${inUnits(capacitance)}; ${use.what} is usually ${use.usual}. Is ${inUnits(likelyValue(capacitance, ...use.usualFarads))} meant?`,
      remedy: "Read the print again: 473 is 47 nF, 474 is 470 nF; 0.047 µF is 47 nF.",
    });
  });
}
