/** For whoever measures a pickup on the bench. Common practice, no source. */
export const LEAD_CAUTIONS: readonly string[] = [
  "Never pull or push the rods of a coil: they are its bobbin's core, and the wire on them tears.",
  "Leave a cover on, or lay tape over an open coil, before anything made of iron comes near it.",
  "Hold the screwdriver back so that the magnet cannot snatch it: a tip that jumps tears the wire.",
  "Nothing is plugged into an amplifier while you measure.",
  "Touch no bare probe tips while reading ohms: two hands read as a megohm across an open pair.",
  "Keep the ends of the leads apart and off the bench's metal.",
];
