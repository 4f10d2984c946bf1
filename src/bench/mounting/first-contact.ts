import { contactLug } from "../../build-file/lug-names.ts";
import { switchControls } from "../../build-file/lugs.ts";
import type { Build } from "../../build-file/schema.ts";
import { listed } from "../../english.ts";

/** "lever.A0 and lever.A1": lugs that a part's switch joins in its first position; undefined where it joins none there. */
export function firstContact(build: Build, part: string): string | undefined {
  const control = switchControls(build.parts).find((each) => each.part === part);
  const joined = control?.table.positions[0]?.find((group) => group.length > 1);
  return control && joined && listed(joined.slice(0, 2).map((local) => contactLug(control.name, local)));
}
