import type { FaultKind } from "../priors/fault-shares.ts";

/** What to do about a fault that no meter shows, and how to do no harm with it. Common practice, no source. */
export interface Remedy {
  readonly label: string;
  readonly cautions: readonly string[];
}

const UNPLUG = "Unplug the guitar first.";
const QUIET = "Turn the amplifier low first: what is found may crack loudly.";

export const REMEDIES: Readonly<Partial<Record<FaultKind, Remedy>>> = {
  "cable-bad": { label: "try another instrument lead", cautions: [QUIET] },
  "jack-spring": {
    label: "bend the jack's tip spring a little inwards and wipe its tip with a clean cloth; the plug must snap in",
    cautions: [UNPLUG, "Bend it a little at a time: a spring that is bent back and forth breaks."],
  },
  "pot-scratchy": {
    label:
      "turn the pot from end to end twenty times; if it comes back, spray a short burst of contact cleaner for pots into it and turn it again",
    cautions: [
      UNPLUG,
      "Use a cleaner that says it is safe for plastics, with moving air and nothing that sparks, and keep it off the finish.",
    ],
  },
  "pot-loose": {
    label: "hold the pot's body still from behind, tighten its nut, and see that its wires are whole",
    cautions: [UNPLUG, "Pad the finish under the spanner."],
  },
  "switch-worn": {
    label:
      "work the switch through all of its positions thirty times; if it comes back, clean its contacts with a short burst of contact cleaner",
    cautions: [
      UNPLUG,
      "Use a cleaner that says it is safe for plastics, with moving air and nothing that sparks, and keep it off the finish.",
    ],
  },
  "wire-loose": {
    label:
      "tap the guard softly and move each wire with a wooden stick while it plays, and solder the joint that answers anew",
    cautions: [QUIET, "Touch nothing but wood inside while it is plugged in; unplug it before the iron comes near."],
  },
  "pickup-microphonic": {
    label: "tap the pickup's cover with a pencil at playing volume: one that howls sounds like a microphone",
    cautions: [QUIET, "Hot wax burns and catches fire: have windings waxed by somebody who has the bath for it."],
  },
};
