/** Shown wherever a switch is tried with a beeper. Common practice. */
export const BEEPER_CAUTIONS: readonly string[] = [
  "Unplug the guitar from the amplifier before you measure, and never open an amplifier.",
  "Take the switch out of its circuit: a lug that is still wired can beep through a pickup, a pot or the ground.",
  "Touch bare metal with both tips, hold still for a second, and keep your fingers off: skin does not beep, but it makes readings wander.",
];
