/**
 * What the audit can find, by stable code. `fault`: it does not work as any guard should; `warning`: it works, and is
 * rarely meant; `note`: worth knowing. A code's own severity may be lowered where the wiring shows intent.
 */
export const FINDING_CODES = {
  "no-pickup": {
    severity: "note",
    title: "A harness without pickups",
    meaning: "Nothing can be heard yet; switch, pots and jack are judged as if a single coil sat in every free place.",
  },
  "jack-unwired": {
    severity: "fault",
    title: "A jack lug has no wire",
    meaning: "The tip or the sleeve of the jack meets nothing, so no sound can leave the guitar.",
  },
  "jack-swapped": {
    severity: "fault",
    title: "Hot and ground are swapped at the jack",
    meaning:
      "Cases, strings or shields lead to the tip: it sounds and meters as it should, and buzzes when metal is touched.",
  },
  "hot-shorted": {
    severity: "fault",
    title: "The hot is shorted to ground",
    meaning: "A wire ties the signal to ground; taking that wire away brings the sound back.",
  },
  "dead-position": {
    severity: "fault",
    title: "A switch position is silent",
    meaning: "No coil reaches the jack there, whatever the dials do.",
  },
  "switch-mutes": {
    severity: "note",
    title: "A switch silences everything",
    meaning: "One position of a switch of its own cuts the sound in every position of the others, as a mute does.",
  },
  "pickup-silent": {
    severity: "fault",
    title: "A pickup has no way to the jack",
    meaning: "The pickup is heard in no position.",
  },
  "coil-silent": {
    severity: "warning",
    title: "One coil of a pickup is never heard",
    meaning: "One of the two coils reaches the jack in no position.",
  },
  "part-unconnected": {
    severity: "warning",
    title: "A part is not in the circuit",
    meaning: "The part has too few of its lugs wired, or all of them on one point, to do anything in any position.",
  },
  "control-no-effect": {
    severity: "fault",
    title: "A control does nothing",
    meaning: "Moving it changes nothing that is heard in any position.",
  },
  "tone-never-reaches": {
    severity: "fault",
    title: "A tone control never reaches a pickup",
    meaning: "None of its lugs meets the signal in any position.",
  },
  "position-without-tone": {
    severity: "note",
    title: "A position has no tone control",
    meaning: "No tone control acts there; older guards leave the bridge pickup so.",
  },
  "case-ungrounded": {
    severity: "fault",
    title: "A pot case has no ground",
    meaning: "The case is not joined to the jack's sleeve. A fault where a cap leg or a ground lead relies on it.",
  },
  "case-hot": {
    severity: "fault",
    title: "A pot case is on the hot side",
    meaning: "The case carries signal and works as an aerial; touching it hums, and a grounded neighbour shorts it.",
  },
  "strings-ungrounded": {
    severity: "warning",
    title: "The strings are not grounded",
    meaning:
      "The claw or bridge wire does not lead to the jack's sleeve: hum stops only when a grounded part is touched.",
  },
  "strings-hot": {
    severity: "fault",
    title: "The strings are on the hot side",
    meaning: "The claw or bridge wire leads to the signal: touching the strings buzzes.",
  },
  "strings-not-shown": {
    severity: "note",
    title: "No wire to the strings is given",
    meaning: "The build names no claw or bridge terminal, so their ground cannot be checked here.",
  },
  "shield-floating": {
    severity: "warning",
    title: "A shield is not grounded",
    meaning: "A cover, baseplate, braid or foil that goes nowhere picks up more than it keeps out.",
  },
  "shield-hot": {
    severity: "fault",
    title: "A cover or baseplate is on the hot side",
    meaning: "The metal of a pickup is tied to a lead that is not ground, as after a plain swap of its two leads.",
  },
  "metal-to-part": {
    severity: "note",
    title: "A cover has to be parted from its lead",
    meaning:
      "The pickup's ground lead goes to a switch or to the hot; a cover or baseplate tied to it inside would put it on ground.",
  },
  "pair-out-of-phase": {
    severity: "warning",
    title: "Pickups are out of phase",
    meaning:
      "Pickups that sound together work against each other: thin and weak. A note where a switch does it on purpose.",
  },
  "coils-out-of-phase": {
    severity: "fault",
    title: "The coils of one pickup are out of phase",
    meaning: "Its two coils work against each other: thin, and it hums. A note where a switch does it on purpose.",
  },
  "hum-not-cancelling": {
    severity: "warning",
    title: "Hum where cancelling is expected",
    meaning:
      "Two coils that could cancel hum add it. A note where keeping the other coil of a split pickup would cancel it.",
  },
  "volume-backwards": {
    severity: "fault",
    title: "A volume is wired backwards",
    meaning: "It is loudest at 0 and quietest at 10.",
  },
  "tone-backwards": {
    severity: "warning",
    title: "A tone control is wired backwards",
    meaning: "It is brightest at 0 and darkest at 10.",
  },
  "volume-never-silent": {
    severity: "warning",
    title: "The volume does not reach silence",
    meaning: "With every volume at 0 the pickup is still heard.",
  },
  "volumes-mute-each-other": {
    severity: "note",
    title: "Either volume mutes both pickups",
    meaning:
      "Where the pickups sound together, any of several volumes at 0 silences them all; a known trait of this wiring.",
  },
  "unused-lug-touches": {
    severity: "fault",
    title: "A lug that should be free touches something",
    meaning:
      "A tone pot needs two lugs; its third makes a second path, so that it works as a volume or from both ends.",
  },
  "cap-value-unusual": {
    severity: "warning",
    title: "A cap is far from the usual value",
    meaning: "Often a slip of ten: 0.47 µF for 0.047 µF, or 22 pF for 22 nF.",
  },
  "pot-value-unusual": {
    severity: "warning",
    title: "A pot is far from the usual value",
    meaning: "Often a slip of the unit: 500 Ω for 500 kΩ.",
  },
  "two-ground-paths": {
    severity: "note",
    title: "Ground runs by two paths",
    meaning: "Ground wires close a ring. Inside a shielded cavity this is rarely heard; a note, not an error.",
  },
  "audit-limited": {
    severity: "note",
    title: "The build is too large for a full audit",
    meaning: "Not every combination of its switches, or not every pot in each of them, was tried.",
  },
  "load-unusual": {
    severity: "note",
    title: "A pickup sees an unusual load",
    meaning:
      "The pots load the pickup far more or far less than such pickups usually see: duller or brighter than expected.",
  },
  "metal-dims": {
    severity: "note",
    title: "A pickup's own metal dims it",
    meaning:
      "A cover or can takes treble of what the strings induce, so that the pickup is dull whatever it is wired to.",
  },
} as const satisfies Record<string, { severity: Severity; title: string; meaning: string }>;

export type Severity = "fault" | "warning" | "note";
export type FindingCode = keyof typeof FINDING_CODES;
