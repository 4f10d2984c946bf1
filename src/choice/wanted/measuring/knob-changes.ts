import { type Settings, withControl } from "../../../build-file/settings.ts";
import { REFERENCE_HZ } from "../../../response/features.ts";
import { flatDrive } from "../../drive.ts";
import { curveFor, energiesFor, type Guard } from "../../guard.ts";
import { brightnessCams } from "../../search/wish.ts";
import { spanDb, TREBLE_HZ } from "./spans.ts";

/** Where those who clean up by the volume customarily leave it; common practice, no source. */
const TURNED_DOWN = 6;
/** What moves the brightness by less than half the ear's smallest band has no half. */
const LEAST_TRAVEL_CAMS = 0.5;
const FLAT = flatDrive();

/** The settings with one sort of pots turned; null where the guard has none. */
function turnedTo({ controls }: Guard, settings: Settings, role: "volume" | "tone", dial: number): Settings | null {
  return controls.potsWithRole(role).length === 0 ? null : withControl(controls, settings, role, dial);
}

/** What turning the volume down takes, in dB: of the level at the reference frequency, and of the treble beside it; null without one. */
export function volumeChange(guard: Guard, settings: Settings): { fall: number; treble: number } | null {
  const down = turnedTo(guard, settings, "volume", TURNED_DOWN);
  if (!down) return null;
  const [open, turned] = [settings, down].map((each) => {
    const transfers = guard.transfers(each);
    const level = curveFor(transfers, Float64Array.of(REFERENCE_HZ))[0]!;
    return { level, treble: spanDb(energiesFor(transfers, FLAT), TREBLE_HZ) - level };
  });
  return { fall: turned!.level - open!.level, treble: turned!.treble - open!.treble };
}

/** How far the tone's turn moves the brightness, in Cams, and how much of that is its first half, in %; null without a tone there. */
export function toneChange(guard: Guard, settings: Settings): { travel: number; half: number | null } | null {
  const cams = [10, 5, 0].map((dial) => {
    const turned = turnedTo(guard, settings, "tone", dial);
    return turned && brightnessCams(guard, turned);
  });
  const [open, half, shut] = cams;
  if (open == null || half == null || shut == null) return null;
  const travel = open - shut;
  return { travel, half: Math.abs(travel) < LEAST_TRAVEL_CAMS ? null : (100 * (open - half)) / travel };
}
