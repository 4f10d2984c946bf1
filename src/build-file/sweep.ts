import { faultAt } from "../errors.ts";
import { MAX_SETTINGS } from "../limits.ts";
import {
  type Controls,
  collect,
  DIAL_MAX,
  parseSettings,
  type RawSettings,
  rolesFirst,
  type Settings,
  type SettingValue,
  withControl,
} from "./settings.ts";

/** Axes of a sweep: a control or role, and the values it takes one after another. */
export type RawSweep = Readonly<Record<string, readonly SettingValue[]>>;

/** Every position of the main switch × tone 0, 1, … 10; without a switch or a tone pot that axis is left out. */
export function defaultSweep(controls: Controls): RawSweep {
  const upTo = (count: number, first: number) => Array.from({ length: count }, (_, index) => index + first);
  return {
    ...(controls.main ? { [controls.main.name]: upTo(controls.main.table.positions.length, 1) } : {}),
    ...(controls.potsWithRole("tone").length > 0 ? { tone: upTo(DIAL_MAX + 1, 0) } : {}),
  };
}

/**
 * All settings of a sweep, the first axis varying slowest: `sweep` varies its axes over `settings`; `settings` alone is that
 * one setting; neither is the default sweep.
 * @throws PresolderError SETTINGS_INVALID, or LIMIT_EXCEEDED for more than MAX_SETTINGS.
 */
export function expandSweep(controls: Controls, sweep?: RawSweep, raw?: RawSettings): Settings[] {
  const base = parseSettings(controls, raw);
  if (!sweep && raw) return [base];
  const axes = Object.entries(sweep ?? defaultSweep(controls));
  const count = axes.reduce((product, [, values]) => product * values.length, 1);
  if (count > MAX_SETTINGS) {
    const message = `asks for ${count} settings; expected at most ${MAX_SETTINGS}`;
    throw faultAt("LIMIT_EXCEEDED", "sweep", message);
  }
  collect(
    axes.flatMap(([key, values]) =>
      values.map((value, index): [string, () => Settings] => [
        `sweep.${key}.${index}`,
        () => withControl(controls, base, key, value),
      ]),
    ),
  );
  const combinations = axes.reduce<[string, SettingValue][][]>(
    (rows, [key, values]) =>
      rows.flatMap((row) => values.map((value): [string, SettingValue][] => [...row, [key, value]])),
    [[]],
  );
  return combinations.map((row) =>
    rolesFirst(controls, row).reduce((state, [key, value]) => withControl(controls, state, key, value), base),
  );
}
