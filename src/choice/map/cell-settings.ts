import { type Controls, type Settings, withControl } from "../../build-file/settings.ts";

/** How far the tone pots are gone through. */
export const TONE_STOPS = { open: [10], turned: [10, 6, 3, 0] } as const;
export type ToneStops = keyof typeof TONE_STOPS;

/** A guard's cells. */
export interface CellSettings {
  readonly settings: readonly Settings[];
  /** Whether switches beside the main one stay down, since they would make too many cells. */
  readonly isCut: boolean;
}

/** Five positions by three push-pulls by four stops of the tone, and some. */
const MOST_OF_A_GUARD = 200;

interface Axis {
  readonly key: string;
  readonly values: readonly number[];
}

function positions({ name, table }: Controls["switches"][number]): Axis {
  return { key: name, values: table.positions.map((_, index) => index + 1) };
}

function product(controls: Controls, axes: readonly Axis[]): Settings[] {
  return axes.reduce<Settings[]>(
    (all, { key, values }) =>
      all.flatMap((settings) => values.map((value) => withControl(controls, settings, key, value))),
    [controls.atRest],
  );
}

const sizeOf = (axes: readonly Axis[]) => axes.reduce((size, { values }) => size * values.length, 1);

/** The settings in which a guard is heard: every position of every switch, volumes at 10, all tones together at each stop. */
export function cellSettings(controls: Controls, tones: ToneStops): CellSettings {
  const main = controls.main ? [positions(controls.main)] : [];
  const others = controls.switches.filter((each) => each !== controls.main).map(positions);
  const tone = controls.potsWithRole("tone").length > 0 ? [{ key: "tone", values: TONE_STOPS[tones] }] : [];
  const isCut = sizeOf([...main, ...others, ...tone]) > MOST_OF_A_GUARD;
  return { settings: product(controls, [...main, ...(isCut ? [] : others), ...tone]), isCut };
}
