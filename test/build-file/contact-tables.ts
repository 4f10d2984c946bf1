/**
 * The trade's contact tables (common practice, no source), written out by hand and apart from the program: for every
 * position, the lugs that stand joined.
 */
export const CONTACT_TABLES: Readonly<Record<string, readonly string[]>> = {
  "lever-3": ["A0-A1 B0-B1", "A0-A2 B0-B2", "A0-A3 B0-B3"],
  "lever-5": ["A0-A1 B0-B1", "A0-A1-A2 B0-B1-B2", "A0-A2 B0-B2", "A0-A2-A3 B0-B2-B3", "A0-A3 B0-B3"],
  "lever-5-four-pole": [
    "A0-A1 B0-B1 C0-C1 D0-D1",
    "A0-A2 B0-B2 C0-C2 D0-D2",
    "A0-A3 B0-B3 C0-C3 D0-D3",
    "A0-A4 B0-B4 C0-C4 D0-D4",
    "A0-A5 B0-B5 C0-C5 D0-D5",
  ],
  "toggle-3": ["A0-A1", "A0-A1-A2", "A0-A2"],
  spdt: ["A0-A1", "A0-A2"],
  dpdt: ["A0-A1 B0-B1", "A0-A2 B0-B2"],
  "dpdt-on-on-on A1-B2": ["A0-A1 B0-B1", "A0-A1 B0-B2", "A0-A2 B0-B2"],
  "dpdt-on-on-on A2-B1": ["A0-A1 B0-B1", "A0-A2 B0-B1", "A0-A2 B0-B2"],
  "rotary 2×4": ["A0-A1 B0-B1", "A0-A2 B0-B2", "A0-A3 B0-B3", "A0-A4 B0-B4"],
};

/** The joined lugs of one position, as groups. */
export function groupsIn(table: string, position: number): string[][] {
  return CONTACT_TABLES[table]![position - 1]!.split(" ").map((group) => group.split("-"));
}
