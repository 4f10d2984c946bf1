import { partsOfKind } from "../../build-file/parts-of-kind.ts";
import type { Build } from "../../build-file/schema.ts";
import { firstContact } from "./first-contact.ts";
import { type MountingStep, stepFor } from "./mounting-step.ts";

function pushPullStep(build: Build, pots: readonly string[]): MountingStep[] {
  const contacts = pots.flatMap((name) => firstContact(build, name) ?? []);
  const check = contacts.length === 0 ? "" : ` Down, the meter finds joined: ${contacts.join("; ")}.`;
  return stepFor(
    pots,
    "Push-pull",
    `Its body is deeper than a plain pot's: measure the cavity first, and set a spacer ring or a second nut under it where the cavity is too shallow. Try the shaft up and down with the knob on, before it is wired.${check}`,
  );
}

/** How a pot sits in the guard. Common practice, no source. */
export function potSteps(build: Build): MountingStep[] {
  const pots = partsOfKind(build, "pot");
  const names = pots.map(([name]) => name);
  return [
    ...stepFor(
      names,
      "Locating tab",
      "The small tab beside the bushing keeps a pot from turning. Put it into its hole where the guard has one; bend it flat or clip it off where not, or the pot stands aslant.",
    ),
    ...stepFor(
      names,
      "Washers and nut",
      "Toothed washer inside, between pot and guard; flat washer and nut on the face. Start the nut by hand: one that binds in its first turn sits crosswise or has another thread. Hold the case while you tighten, so that the lugs stay where you want them.",
    ),
    ...stepFor(
      names,
      "Shaft height",
      "Try the knob: it clears the guard, and the nut has its whole thread. Too high: a spacer ring, or a second nut, on the inside. Too low: take out what is under it, or use a pot with a longer bushing.",
    ),
    ...pushPullStep(
      build,
      pots.flatMap(([name, { drives }]) => (drives ? [name] : [])),
    ),
  ];
}
