/** What a connection between two lugs may be made of. */
export const WIRE_MEANS = ["wire", "bent lug", "jumper", "leg", "lead", "bus wire", "braid", "inside"] as const;

export type WireMeans = (typeof WIRE_MEANS)[number];
