import { BoundedMap } from "../../bounded-map.ts";
import { type Drive, driveOfPartials, scaledDrive } from "../../choice/drive.ts";
import type { Guard } from "../../choice/guard.ts";
import { expectPickups } from "../../render/feed.ts";
import type { Playing } from "../../render/playing.ts";
import { pluckedPartials } from "../../render/plucked-partials.ts";
import { coilPlaces, stringSetOf } from "../../response/coil-places.ts";

/** A drawer's guards mostly have their coils in the same few places. */
const MOST_LAYOUTS = 32;

/** By where the coils sit, what strings are over them and how they are played: the same answer to the same question. */
const drives = new BoundedMap<string, Drive>(MOST_LAYOUTS);

/** The usual phrase as a guard's coils take it up. @throws PresolderError SOUND_UNUSABLE for a harness without pickups */
export function phraseDrive({ build, sources }: Guard, playing: Playing): Drive {
  expectPickups(sources);
  const coils = coilPlaces(build, sources);
  const bare = coils.map((coil) => ({ ...coil, sign: 1 as const, output: 1 }));
  const strings = stringSetOf(build);
  const key = JSON.stringify([bare, strings, playing]);
  let drive = drives.get(key);
  if (!drive) {
    drive = driveOfPartials("strum", pluckedPartials(bare, strings, playing), bare.length);
    drives.set(key, drive);
  }
  return scaledDrive(
    drive,
    coils.map(({ sign, output }) => sign * output),
  );
}
