import { type Controls, type Settings, withControl } from "../build-file/settings.ts";

/** One position of the main switch, everything else at rest. */
export interface MainPosition {
  readonly settings: Settings;
  /** "lever 2"; empty in a build without a switch. */
  readonly label: string;
}

/** Every position of the main switch; the one state at rest where a build has none. */
export function mainPositions(controls: Controls): MainPosition[] {
  const { main, atRest } = controls;
  if (!main) return [{ settings: atRest, label: "" }];
  return main.table.positions.map((_, index) => ({
    settings: withControl(controls, atRest, main.name, index + 1),
    label: `${main.name} ${index + 1}`,
  }));
}
