import { trackLugs } from "../../../build-file/lug-names.ts";
import { listed } from "../../../english.ts";
import { SILENT_BELOW } from "../../../response/labels/position-coils.ts";
import { type AuditContext, type State, withDials } from "../context.ts";
import { type Finding, finding } from "../finding.ts";
import { toneLugsThatTouch } from "./tone-lugs.ts";

/** 6 dB: past any treble bleed or loading, a pot that is this much louder at 0 turns the wrong way. */
const LOUDER_RATIO = 2;
/** A tone control changes the top octave by far more than 1 dB; loading alone by less. */
const BRIGHTER_DB = 1;

function strengthsAt(context: AuditContext, { settings }: State, dials: Readonly<Record<string, number>>): number[] {
  return context.strengths(withDials(settings, dials));
}

/** +1 where a pot's dial raises what it acts on, −1 where it lowers it, 0 where it does neither. */
function direction(context: AuditContext, state: State, pot: string): number {
  const low = strengthsAt(context, state, { [pot]: 0 });
  const high = strengthsAt(context, state, { [pot]: 10 });
  const rises = low.some((strength, i) => high[i]! > SILENT_BELOW && high[i]! > LOUDER_RATIO * strength);
  const falls = low.some((strength, i) => strength > SILENT_BELOW && strength > LOUDER_RATIO * high[i]!);
  return rises === falls ? 0 : rises ? 1 : -1;
}

/** Volumes, and pots of no stated role that act as one, that are loudest at 0. */
export function backwardVolumes(context: AuditContext): Finding[] {
  return context.partsOf("pot").flatMap(([name, { role }]) => {
    if (role !== "volume" && role !== undefined) return [];
    const backwards = context.alive.filter((state) => direction(context, state, name) < 0);
    const forwards = context.alive.some((state) => direction(context, state, name) > 0);
    if (backwards.length === 0 || forwards) return [];
    return finding({
      code: "volume-backwards",
      lugs: trackLugs(name),
      settings: backwards.length === context.alive.length ? [] : context.settingsOf(backwards),
      message: `${name} is wired backwards: loudest at 0, quietest at 10.`,
      remedy: "Swap the wires on its two outer lugs; the wiper stays.",
    });
  });
}

/** Tones that are brightest at 0. */
export function backwardTones(context: AuditContext): Finding[] {
  const touching = new Set(toneLugsThatTouch(context).flatMap(({ lugs }) => lugs.map((lug) => lug.split(".")[0])));
  return context.controls.potsWithRole("tone").flatMap((name) => {
    if (touching.has(name)) return [];
    const treble = ({ settings }: State, dial: number) =>
      context.activity.levelsIn(withDials(settings, { [name]: dial })).at(-1)!;
    const change = context.alive.map((state) => treble(state, 10) - treble(state, 0));
    const backwards = context.alive.filter((_, i) => change[i]! < -BRIGHTER_DB);
    if (backwards.length === 0 || change.some((rise) => rise > BRIGHTER_DB)) return [];
    return finding({
      code: "tone-backwards",
      lugs: trackLugs(name),
      message: `${name} is wired backwards: brightest at 0, darkest at 10.`,
      remedy: "Move the wire on its outer lug to the other outer lug.",
    });
  });
}

/** States where volumes act and yet leave sound with all of them at 0. */
export function volumesThatNeverSilence(context: AuditContext): Finding[] {
  const volumes = context.controls.potsWithRole("volume");
  const down = Object.fromEntries(volumes.map((name) => [name, 0]));
  const acting = (state: State) => volumes.filter((name) => context.activity.isActive(name, state.settings));
  const backwards = new Set(backwardVolumes(context).flatMap(({ lugs }) => lugs.map((lug) => lug.split(".")[0])));
  const leaking = context.alive.filter(
    (state) => acting(state).length > 0 && !context.isSilent(withDials(state.settings, down)),
  );
  const names = [...new Set(leaking.flatMap(acting))].filter((name) => !backwards.has(name));
  if (names.length === 0) return [];
  return [
    finding({
      code: "volume-never-silent",
      lugs: names.flatMap((name) => trackLugs(name)),
      settings: context.settingsOf(leaking),
      message: `With the volume at 0 there is still sound ${context.where(leaking)}.`,
      remedy: "Check the ground on the volume's outer lug (the bent one): without it the pot only adds resistance.",
    }),
  ];
}

/** Several volumes of which each alone, at 0, silences pickups that have a volume of their own. */
export function volumesThatMuteEachOther(context: AuditContext): Finding[] {
  const volumes = context.controls.potsWithRole("volume");
  const mutes = (state: State, name: string) => context.isSilent(withDials(state.settings, { [name]: 0 }));
  const affected = context.alive.flatMap((state) => {
    // In series either volume carries both pickups, however it is wired.
    if (state.described.pickups.length < 2 || state.described.relation === "series") return [];
    const muting = volumes.filter((name) => mutes(state, name));
    return muting.length > 1 ? [{ state, muting }] : [];
  });
  if (affected.length === 0) return [];
  const names = volumes.filter((name) => affected.some(({ muting }) => muting.includes(name)));
  const states = affected.map(({ state }) => state);
  return [
    finding({
      code: "volumes-mute-each-other",
      lugs: names.flatMap((name) => trackLugs(name)),
      settings: context.settingsOf(states),
      message: `Turning any of ${listed(names)} to 0 silences every pickup ${context.where(states)}.`,
      remedy:
        "To make them independent, take each pickup to the wiper and the output from the outer lug; the volume then does little until its end.",
    }),
  ];
}
