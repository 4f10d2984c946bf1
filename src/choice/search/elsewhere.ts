import { type Settings, withControl } from "../../build-file/settings.ts";
import { type ComparisonRow, compare } from "../compare/compare.ts";
import { flatDrive } from "../drive.ts";
import type { Guard } from "../guard.ts";

/** What a choice changes in another setting, against the build as it stands. */
export type Elsewhere = Pick<
  ComparisonRow,
  "label" | "loudnessDifference" | "largest" | "features" | "audible" | "verdict"
>;

/** Every position at rest, then tone and volume turned down: where a choice may cost something. */
function otherSettings(guard: Guard): Settings[] {
  const { controls } = guard;
  const { main } = controls;
  const turn = (key: string, value: number) => withControl(controls, controls.atRest, key, value);
  const positions = main ? main.table.positions.map((_, index) => turn(main.name, index + 1)) : [controls.atRest];
  const turned = (["tone", "volume"] as const).flatMap((role) =>
    controls.potsWithRole(role).length === 0 ? [] : (role === "tone" ? [5, 0] : [5]).map((dial) => turn(role, dial)),
  );
  return [...positions, ...turned];
}

/** A choice beside the build as it stands, equally loud, in every setting that it may cost something. */
export function elsewhereOf(original: Guard, chosen: Guard): Elsewhere[] {
  const drive = flatDrive();
  const settings = otherSettings(original);
  const { rows } = compare({ guard: original, drive, settings }, { guard: chosen, drive, settings }, null);
  return rows.map(({ label, loudnessDifference, largest, features, audible, verdict }) => ({
    label,
    loudnessDifference,
    largest,
    features,
    audible,
    verdict,
  }));
}
