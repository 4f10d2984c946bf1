import { suggestion } from "../../build-file/nearest.ts";
import type { Build } from "../../build-file/schema.ts";
import { faultAt } from "../../errors.ts";
import { type Kick, phaseCheck } from "../phase-check.ts";
import type { KickSense } from "./leads-request.ts";

/** What this needle did on a pickup of the guard, + on the jack's tip. */
export interface KickReference {
  readonly pickup: string;
  readonly kick: Kick;
}

/**
 * Whether this needle goes as the guard says it must. A build file's windings are told against each other alone, so that one tap
 * on a pickup that is in the guard sets what up is there.
 * @throws PresolderError REQUEST_INVALID where no such pickup is heard
 */
export function kickSense(build: Build, { pickup, kick }: KickReference): KickSense {
  const { pickups } = phaseCheck(build);
  const heard = pickups.find((each) => each.pickup === pickup);
  if (heard?.kickAtJack) return heard.kickAtJack === kick ? 1 : -1;
  const names = pickups.filter(({ kickAtJack }) => kickAtJack !== null).map((each) => each.pickup);
  throw faultAt(
    "REQUEST_INVALID",
    "reference.pickup",
    `"${pickup}" is no pickup that is heard at the jack${suggestion(pickup, names)}; expected one of ${names.join(", ")}`,
  );
}
