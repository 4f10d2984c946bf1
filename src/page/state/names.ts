import type { SwitchControl } from "../../build-file/lugs.ts";
import type { Build } from "../../build-file/schema.ts";
import { readableName } from "../../build-file/words/part-words.ts";
import { capitalised } from "../../english.ts";

/** What a part is called on the page: its label, or its name in the build file made readable ("tone1" is "Tone 1"). */
export function partLabel(build: Pick<Build, "parts">, name: string): string {
  const label = build.parts[name]?.label;
  return label || capitalised(readableName(name));
}

export function switchLabel(build: Pick<Build, "parts">, control: SwitchControl): string {
  return control.onShaft ? `${partLabel(build, control.part)} push-pull` : partLabel(build, control.part);
}

/** What a switch's positions are called. */
export function positionNames(control: SwitchControl): readonly string[] {
  const count = control.table.positions.length;
  if (control.onShaft || count === 2) return count === 3 ? ["down", "centre", "up"] : ["down", "up"];
  return control.table.positions.map((_, index) => String(index + 1));
}
