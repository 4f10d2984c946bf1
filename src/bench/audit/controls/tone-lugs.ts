import { trackLugs } from "../../../build-file/lug-names.ts";
import type { Build } from "../../../build-file/schema.ts";
import { CircuitMaker } from "../../../response/circuit.ts";
import { ActivityReader } from "../../../response/labels/activity.ts";
import { bridgedCaps, type LeakyTone } from "../bridged-caps.ts";
import { type AuditContext, jackOhms, type State, withDials } from "../context.ts";
import { type Finding, finding } from "../finding.ts";

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

function outerLugsJoined(tone: string): Finding {
  const [one, , three] = trackLugs(tone);
  return finding({
    code: "unused-lug-touches",
    lugs: [one, three],
    message: `Both outer lugs of ${tone} are on one point, so that it darkens towards both ends.`,
    remedy: "Free one of the two outer lugs: the one the cap or ground is not meant to be on.",
  });
}

function secondPath(context: AuditContext, { tone, states }: LeakyTone): Finding {
  const culprit = culpritLug(context, tone, states[0]!);
  return finding({
    code: "unused-lug-touches",
    lugs: culprit ? [culprit] : trackLugs(tone),
    settings: context.settingsOf(states),
    message: culprit
      ? `${culprit} should be free and touches ${touchedBy(context, culprit)}: ${tone} works as a second volume.`
      : `${tone} passes direct current: it works as a second volume.`,
    remedy: culprit
      ? `Free ${culprit}: a tone pot needs two lugs only.`
      : "Check that the cap is in series with the tone pot, and that the cap is not shorted.",
  });
}

/** Tone pots whose third lug makes a second path, and caps that are bridged. */
export function toneLugsThatTouch(context: AuditContext): Finding[] {
  const maker = new CircuitMaker(context.build);
  const tones = context.controls.potsWithRole("tone");
  const joined = tones.filter((tone) => joinedOuterLugs(context, tone));
  const leaky = tones
    .filter((tone) => !joined.includes(tone))
    .map((tone) => ({ tone, states: context.alive.filter((state) => passesDirectCurrent(maker, tone, state)) }))
    .filter(({ states }) => states.length > 0);
  const bridged = bridgedCaps(context, leaky);
  return [
    ...joined.map(outerLugsJoined),
    ...bridged.findings,
    ...leaky.filter(({ tone }) => !bridged.tones.has(tone)).map((each) => secondPath(context, each)),
  ];
}
