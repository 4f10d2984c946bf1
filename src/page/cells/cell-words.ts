import { DIAL_MAX, parseSettings, type RawSettings } from "../../build-file/settings.ts";
import { partLabel, positionNames, switchLabel } from "../state/names.ts";
import type { Reading } from "../state/reading.ts";

/** What is not as it mostly is: "position 4", "position 2, tone 6", "position 1, Tone 2 push-pull up". */
export function settingWords({ build, controls }: Reading, raw: RawSettings): string {
  const { dials, switches } = parseSettings(controls, raw);
  const { main } = controls;
  const others = controls.switches.filter(({ name }) => name !== main?.name && (switches[name] ?? 1) > 1);
  const tones = controls.potsWithRole("tone");
  const shared = new Set(tones.map((name) => dials[name]));
  const isTogether = tones.length > 0 && shared.size === 1;
  const turned = controls.pots.filter(
    (name) => dials[name] !== undefined && dials[name] !== DIAL_MAX && !(isTogether && tones.includes(name)),
  );
  const tone = isTogether ? [...shared][0]! : DIAL_MAX;
  const words = [
    ...(main ? [`position ${switches[main.name] ?? 1}`] : []),
    ...others.map((each) => `${switchLabel(build, each)} ${positionNames(each)[switches[each.name]! - 1]}`),
    ...(tone === DIAL_MAX ? [] : [`tone ${tone}`]),
    ...turned.map((name) => `${partLabel(build, name)} at ${dials[name]}`),
  ];
  return words.join(", ") || "as it is";
}
