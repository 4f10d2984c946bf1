import { type Settings, withControl } from "../../build-file/settings.ts";
import type { ComparisonRow } from "../compare/comparison-row.ts";
import { heardRows } from "../compare/heard-rows.ts";
import { type Drive, flatDrive } from "../drive.ts";
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

const FLAT = flatDrive();

/**
 * A choice beside the build as it stands, equally loud, in every setting that it may cost something.
 * @param played what drives the coils, which both have in the same places, for what is heard
 */
export function elsewhereOf(original: Guard, chosen: Guard, played: Drive): Elsewhere[] {
  const settings = otherSettings(original);
  const [a, b] = [original, chosen].map((guard) => ({ guard, drive: FLAT, played, settings }));
  return heardRows(a!, b!).map(({ row: { label, loudnessDifference, largest, features, audible, verdict } }) => ({
    label,
    loudnessDifference,
    largest,
    features,
    audible,
    verdict,
  }));
}
