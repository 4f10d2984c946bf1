import type { Build } from "../../build-file/schema.ts";
import { Controls, shaftWord, withControl } from "../../build-file/settings.ts";
import { partWords } from "../../build-file/words/part-words.ts";
import { SettingDescriber } from "../../response/labels/setting-describer.ts";
import { mainPositions } from "../main-positions.ts";

/** What sounds in one state of the switches, every dial at 10. */
export interface PassportPosition {
  /** "1", or "1, lower tone up". */
  readonly position: string;
  /** "bridge + middle, parallel, in phase, hum cancelling". */
  readonly sounds: string;
}

/** What the main switch's positions sound, and what each lesser switch makes of those that it changes. */
export function passportPositions(build: Build): PassportPosition[] {
  const controls = new Controls(build);
  const describer = new SettingDescriber(build);
  const words = partWords(build.parts);
  const states = mainPositions(controls).map(({ settings }, index) => ({
    settings,
    number: String(index + 1),
    sounds: describer.describe(settings).label,
  }));
  const lesser = controls.switches.filter((control) => control !== controls.main);
  const changed = lesser.flatMap((control) =>
    control.table.positions.slice(1).flatMap((_, index) => {
      const at = index + 2;
      const state = control.onShaft ? shaftWord(control, at) : String(at);
      const name = words.get(control.part) ?? control.part;
      return states.flatMap(({ settings, number, sounds }) => {
        const other = describer.describe(withControl(controls, settings, control.name, at)).label;
        return other === sounds ? [] : [{ position: `${number}, ${name} ${state}`, sounds: other }];
      });
    }),
  );
  return [...states.map(({ number, sounds }) => ({ position: number, sounds })), ...changed];
}
