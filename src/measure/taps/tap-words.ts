import type { Build } from "../../build-file/schema.ts";
import { Controls, type Settings, shaftWord } from "../../build-file/settings.ts";
import { partWords, pickupPlace } from "../../build-file/words/part-words.ts";

/** "position 2", "position 1, tone switch up"; the only setting of a guard without switches is "as it is". */
export function settingWords(build: Build, settings: Settings): string {
  const controls = new Controls(build);
  const words = controls.switches.flatMap((control) => {
    const position = settings.switches[control.name] ?? 1;
    if (control === controls.main) return [`position ${position}`];
    if (position === 1) return [];
    const called = partWords(build.parts).get(control.part) ?? control.part;
    return control.onShaft ? [`${called} switch ${shaftWord(control, position)}`] : [`${called} in ${position}`];
  });
  return words.join(", ") || "as it is";
}

/** "middle", "bridge". */
export function pickupCalled({ parts }: Build, pickup: string): string {
  const part = parts[pickup];
  return part ? pickupPlace([pickup, part]) : pickup;
}

/** "middle", "bridge, screw coil". */
export function rowCalled(build: Build, { pickup, coil }: { readonly pickup: string; readonly coil: string }): string {
  const part = build.parts[pickup];
  const called = pickupCalled(build, pickup);
  return part?.kind === "pickup" && Object.keys(part.coils).length > 1 ? `${called}, ${coil} coil` : called;
}
