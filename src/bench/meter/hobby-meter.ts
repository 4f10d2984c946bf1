/** Beyond this a hobby meter shows an open circuit (common practice: 20 MΩ is the highest range). */
export const OPEN_FROM_OHMS = 20e6;
/** Below this a reading is a joint: leads and contacts take up to an ohm or two. */
export const JOINT_UP_TO_OHMS = 3;
/** A good joint and two test leads read up to about an ohm where the wiring has none (common practice, no source). */
export const LEADS_OHMS = 1;

export function isOpen(ohms: number): boolean {
  return ohms >= OPEN_FROM_OHMS;
}

export function isJoint(ohms: number): boolean {
  return ohms <= JOINT_UP_TO_OHMS;
}
