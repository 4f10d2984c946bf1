import { HEIGHT_OVER_FOIL, HEIGHT_OVER_GROUND } from "./runs.ts";
import { REFERENCE_TURN_AREA, REFERENCE_TURNS, TURNS_AREA_UNCERTAINTY_DB } from "./turns-area.ts";

/** What every figure of hum and hiss rests on, and how far to trust it. */
export const NOISE_BASIS = {
  field:
    "One magnetic field across the guard's face, as if coils and loops lay flat in it: turned by 90° a guitar hums far less. Homes have 0.025 to" +
    " 0.11 µT, gear nearby more (World Health Organization, fact sheet 322, from memory); harmonics as of customary rectified mains (common practice, no source).",
  coils:
    `Turns × area: ${REFERENCE_TURNS} turns of ${REFERENCE_TURN_AREA * 1e4} cm² for 2.4 H (common practice, no source), others by the root of their inductance; ` +
    `within ±${TURNS_AREA_UNCERTAINTY_DB} dB, since pole pieces raise inductance and flux differently in each make. Coils said to be alike cancel` +
    " wholly here; real ones leave some hundredths.",
  loops:
    "Faraday's law on the area that the wires enclose, laid from lug to lug along the guard's edges, with the ohms of copper wire and of closed" +
    " contacts sharing it between parallel ways. Whether loops add to the coils or take from them depends on the winding's sense: taken counter-clockwise from the back.",
  runs:
    `The electric field's current into unscreened wire ${HEIGHT_OVER_GROUND * 100} cm over grounded metal (our assumption), with its capacitance` +
    " 2πε₀/arcosh(h/a), through what it hangs on. The windings' own pick-up is not in it: a metal cover is against that.",
  sum: "Coils and loops with their signs, open wires by power, as the phase between the room's two fields is unknown.",
  hiss:
    "4kT·Re Z of coils, pots, caps, cable and the input's resistor at 20 °C (Nyquist); the input's own: a triode of 2.5/gm and its stopper" +
    " (handbook, from memory), without the hiss that grows below some hundred hertz.",
  playing: "RMS of a strummed chord over its whole length in the same setting, by the same weighting.",
  "shielded-cavity":
    `Foil about the wires: no electric field reaches them, each has its capacitance against foil ${HEIGHT_OVER_FOIL * 100} cm away, and the foil's eddy currents take` +
    " their small share of the magnetic field. The coils stand outside.",
  "reverse-wound":
    "One single coil wound the other way on turned magnets: the string sounds as before, the hum turns its sign.",
  "twisted-pair": "Each pickup's and the jack's wires go together as far as they can.",
  "screened-wire": "Signal wires of 5 cm and more have a grounded screen, with 100 pF a metre: less treble too.",
} as const;
