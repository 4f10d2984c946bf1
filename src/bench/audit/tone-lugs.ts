import { trackLugs } from "../../build-file/lug-names.ts";
import type { Build } from "../../build-file/schema.ts";
import { CircuitMaker } from "../../response/circuit.ts";
import { ActivityReader } from "../../response/labels/activity.ts";
import { type AuditContext, jackOhms, type State, withDials } from "./context.ts";
import { type Finding, finding } from "./finding.ts";

/** A tone pot behind its cap moves the meter by nothing at all; rounding alone is far below this. */
const METER_MOVES = 1e-3;

function metersDiffer(a: number | null, b: number | null): boolean {
  if (a === null || b === null) return a !== b;
  return Math.abs(a - b) > METER_MOVES * Math.max(a, b);
}

/** Whether turning a tone pot moves what a meter reads at the jack, which a cap in its path forbids. */
function passesDirectCurrent(maker: CircuitMaker, tone: string, { settings }: State): boolean {
  const at = (dial: number) => jackOhms(maker, withDials(settings, { [tone]: dial }));
  return metersDiffer(at(0), at(10)) || metersDiffer(at(5), at(10));
}

function withLugFreed(build: Build, lug: string): Build {
  return { ...build, wires: build.wires.filter(({ from, to }) => from !== lug && to !== lug) };
}

/** The lug that, freed, leaves a tone that works and no longer moves the meter. */
function culpritLug(context: AuditContext, tone: string, state: State): string | undefined {
  return trackLugs(tone).find((lug) => {
    const freed = withLugFreed(context.build, lug);
    if (passesDirectCurrent(new CircuitMaker(freed), tone, state)) return false;
    return new ActivityReader(freed).isActive(tone, state.settings);
  });
}

function joinedOuterLugs(context: AuditContext, tone: string): boolean {
  const [one, wiper, three] = trackLugs(tone).map((lug) => context.wired.netOfLug[context.index(lug)]);
  return one === three && one !== wiper;
}

/** What a lug's own wire leads to. */
function touchedBy(context: AuditContext, lug: string): string {
  const wire = context.build.wires.find(({ from, to }) => from === lug || to === lug);
  return (wire?.from === lug ? wire.to : wire?.from) ?? "something";
}

/** A cap with both its legs on one point, and the tone's lug that is on it too. */
function bridgedCap(context: AuditContext, tone: string): { cap: string; lug: string } | undefined {
  const netOf = (lug: string) => context.wired.netOfLug[context.index(lug)];
  for (const [cap] of context.partsOf("cap")) {
    if (netOf(`${cap}.a`) !== netOf(`${cap}.b`)) continue;
    const lug = trackLugs(tone).find((each) => netOf(each) === netOf(`${cap}.a`));
    if (lug !== undefined) return { cap, lug };
  }
  return undefined;
}

function bridged(
  tone: string,
  { cap, lug }: { cap: string; lug: string },
): Pick<Finding, "lugs" | "message" | "remedy"> {
  return {
    lugs: [lug, `${cap}.a`, `${cap}.b`],
    message: `${cap} is bridged: one of its legs, or ${lug}, touches the case. ${tone} passes direct current and works as a second volume.`,
    remedy: `Bend the leg and ${lug} clear of the case, and put sleeving on the leg.`,
  };
}

/** Tone pots whose third lug makes a second path. */
export function toneLugsThatTouch(context: AuditContext): Finding[] {
  const maker = new CircuitMaker(context.build);
  return context.controls.potsWithRole("tone").flatMap((tone) => {
    const lugs = trackLugs(tone);
    if (joinedOuterLugs(context, tone)) {
      return finding({
        code: "unused-lug-touches",
        lugs: [lugs[0], lugs[2]],
        message: `Both outer lugs of ${tone} are on one point, so that it darkens towards both ends.`,
        remedy: "Free one of the two outer lugs: the one the cap or ground is not meant to be on.",
      });
    }
    const states = context.alive.filter((state) => passesDirectCurrent(maker, tone, state));
    if (states.length === 0) return [];
    const settings = context.settingsOf(states);
    const cap = bridgedCap(context, tone);
    if (cap) return finding({ code: "unused-lug-touches", settings, ...bridged(tone, cap) });
    const culprit = culpritLug(context, tone, states[0]!);
    return finding({
      code: "unused-lug-touches",
      lugs: culprit ? [culprit] : lugs,
      settings,
      message: culprit
        ? `${culprit} should be free and touches ${touchedBy(context, culprit)}: ${tone} works as a second volume.`
        : `${tone} passes direct current: it works as a second volume.`,
      remedy: culprit
        ? `Free ${culprit}: a tone pot needs two lugs only.`
        : "Check that the cap is in series with the tone pot, and that the cap is not shorted.",
    });
  });
}
