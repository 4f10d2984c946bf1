/** What the catalogue's values rest on, in the words shown to a person. */

const OPEN_DATA =
  "the open data set strayr/pickupAnalyseR-data (CC0): some 110 pickups and coils swept by an exciter coil, loaded and unloaded, reduced from its raw curves";
const GUITAR_POTS = "four data sheets of guitar pots";
const FILM_TABLE = "a film capacitor maker's published table that compares dielectrics";
const EIA = "EIA-198, as two capacitor makers publish its codes";

export const WORDS = {
  coils: `In the middle of what coils of this sort measured: ${OPEN_DATA}. Capacitance is with the leads.`,
  singleHenries: `At or near the published typical 2.8 H of a single coil on rod magnets (R. Stanley, note on pickup parameters); one measured 2.6 H in ${OPEN_DATA}.`,
  humbuckerHenries: `With both coils, their coupling and what the steel adds, at or near the published typical 4.7 H of a humbucker (R. Stanley, note on pickup parameters).`,
  withinRanges:
    "Chosen as is customary, no source, so that it stays within what is published of most pickups: 1–10 H and, with normal leads, a resonance at 2–5 kHz that stands 0–12 dB high (H. E. W. Lemme, The Secrets of Electric Guitar Pickups).",
  coupling: `The median of nine humbuckers, 0.09 to 0.20, each from its coils measured alone and in series: ${OPEN_DATA}.`,
  stacked: "An estimate: both coils sit on the same rods and share much more flux than coils side by side. No source.",
  stackedOutput: "An estimate of how little of the strings the lower coil hears. No source.",
  coilResistance: "What such winds are usually said to have. No source: measure yours.",
  output:
    "How loud such a pickup usually is beside a reference single coil. No source: pole height changes it by more than the make does.",
  turned: "What this type is by its name: which way it is wound, and which pole is towards the strings.",
  make: "How such pickups are usually made. No source: makes differ.",
  usualPot: "The pot that is customary with this type. No source.",
  lengths: "From memory: no published table of coil spacings and of the length of string a coil senses was found.",
  shielding: `Fitted within 0.9 dB from 0.5 to 8 kHz to the EMF of measured coils, each over that of a coil on alnico rods under the same exciter: ${OPEN_DATA}.`,

  pots: "The values that guitar pots are sold in and what they are usually used with. No source.",
  potTolerance: `±20 % in ${GUITAR_POTS}.`,
  tolerances: "What such parts are usually sold within. No source; what is printed on the part goes before it.",
  endResistance:
    "Six pots of 100 kΩ read 1.04 to 1.23 Ω at their ends (measurements beside B. Holmes and M. van Walstijn, Potentiometer law modelling and identification, DAFx-19, 2019). Data sheets allow from 2 Ω to 1 % of the track.",
  audioMidpoint:
    "The usual audio taper has about 15 % below half turn. No source for guitar pots; makers' tapers have 5 to 30 %.",
  trackShapes:
    "A maker's specification as fitted by B. Holmes and M. van Walstijn, Potentiometer law modelling and identification, DAFx-19, 2019 (companion data).",
  toneCaps: "The values that tone controls are usually given. No source.",
  trebleBleeds: "The values that treble bleeds are usually given. No source.",

  filmTable: `From ${FILM_TABLE}.`,
  filmTolerance: `One of those in ${FILM_TABLE}: polyester 5, 10 or 20 %, polypropylene 1, 2.5, 5 or 10 %.`,
  filmRange: "From memory: the temperatures over which film caps are usually rated.",
  flatLoss: "From memory: ceramics lose about as much at 10 kHz as at 1 kHz, which is where it is published.",
  class2Loss: "From memory: data sheets of such discs allow 2.5 to 5 % at 1 kHz.",
  ceramicLetters: `The letter that this class is usually sold with: ${EIA}; J is ±5 %, K ±10 %, M ±20 %, Z −20/+80 % (IEC 60062).`,
  ceramicCodes: `What the code itself allows: ${EIA}.`,
  ceramicAgeing: `Of the range that two capacitor makers publish for the class (X7R 1–4 %, Z5U 4–6 %, Y5V 6–10 % a decade of hours).`,
  class2Voltage:
    "From memory: such ceramics lose half and more at their rated voltage. A pickup's fraction of a volt does not show it.",
  steady: "From memory: too little to matter with this dielectric.",
  paper: "From memory of old parts handbooks: no published table of paper in oil was found. Old ones also leak.",
  mica: "From memory of silvered mica's data sheets: no published table was found.",

  cable: "About 100 pF a metre is the published common figure for interconnect cable.",
  cableSpan:
    "From memory: the ends of the span of instrument cables. Two leads measured 510 and 575 pF in all (D. Lamkins).",
  conductor:
    "A 20 AWG centre conductor of 26 strands of 34 AWG (published, Cable anatomy part 3) has 33 mΩ a metre by its area in standard copper (IEC 60028).",
  valveInput: "1 MΩ to ground and 68 kΩ to the grid: B. Judge, Feel the Gain, part 1: guitar input.",
  triode:
    "C_gk + C_ga·(1 + A) (Grid-stoppers and Miller capacitance, valvewizard.co.uk) with 1.6 pF, 1.7 pF and A = 60; both capacitances are from memory.",
  pentode: "5 pF + 101 × 0.05 pF (R. Kuehnel, pentode tutorial 3).",
  lowInput:
    "A quarter of the triode's, which stands for it in this input across the jack; the triode's own is from memory.",
  twoInputs:
    "Two jacks with 68 kΩ each to one grid: the high one has both in parallel before the grid, the low one is a divider of both. Common practice, no source.",
  interface: "1 MΩ with 160 pF: a recording interface's input in a published measurement of a loaded pickup.",
  otherLoads: "Usual inputs of their sort. No source: makes differ.",

  layouts: "What guards with these controls usually have. No source.",
  plans: "How such guards are usually wired, and with which values. No source.",
  switches: "How the trade's switches usually connect. No source: check yours with a beeper.",
  scale: "25.5 inch, rounded to the millimetre: the commonest long scale. No source.",
  places: "From memory: no published table of pickup places was found. Measure yours from the saddles.",
  pitches: "Equal temperament from A = 440 Hz (ISO 16).",
  gauges: "A common light set, from memory.",
  cores:
    "Which strings of a light set are wound, and on what core where a maker does not say: common practice, no source.",
} as const;
