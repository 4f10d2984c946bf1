import { type Controls, type Settings, withControl } from "../../build-file/settings.ts";

/** Tones wide open and shut: what lies between is between them. */
const TONE_DIALS = [10, 0];
/** Where a volume is turned down far enough to lose treble. */
const VOLUME_DOWN = 5;

/** One setting in which a guard is heard. */
export interface Cell {
  readonly settings: Settings;
  /** The same with the tones at 10. */
  readonly open: Settings;
  readonly toneDial: number;
  /** Every switch beside the main one down. */
  readonly isPlain: boolean;
}

/** Every position of every switch, volumes at 10, all tones together at 10 and at 0. */
export function cellsOf(controls: Controls): Cell[] {
  const states = controls.switches.reduce<{ settings: Settings; isPlain: boolean }[]>(
    (all, control) =>
      all.flatMap(({ settings, isPlain }) =>
        control.table.positions.map((_, index) => ({
          settings: withControl(controls, settings, control.name, index + 1),
          isPlain: isPlain && (index === 0 || control === controls.main),
        })),
      ),
    [{ settings: controls.atRest, isPlain: true }],
  );
  const dials = controls.potsWithRole("tone").length > 0 ? TONE_DIALS : [10];
  return states.flatMap(({ settings, isPlain }) =>
    dials.map((toneDial) => ({
      settings: dials.length > 1 ? withControl(controls, settings, "tone", toneDial) : settings,
      open: settings,
      toneDial,
      isPlain,
    })),
  );
}

/** The first position, with the volume at rest and turned down. */
export function volumeDown(controls: Controls): Settings {
  return withControl(controls, controls.atRest, "volume", VOLUME_DOWN);
}
