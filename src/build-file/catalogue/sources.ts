/** What the catalogue's values rest on, in the words shown to the person. */

const RANGES =
  "most pickups have 1–10 H and, with normal leads, a resonance at 2–5 kHz that stands 0–12 dB high (H. E. W. Lemme, The Secrets of Electric Guitar Pickups)";

const MEASURED = "capacitance with its leads, loss and coupling as measured (open data set strayr/pickupAnalyseR-data)";

export const TYPICAL_SINGLE = `inductance at or near the published typical 2.8 H of a single coil on rod magnets (R. Stanley, note on pickup parameters); ${MEASURED}; resistance and output are common practice, no source`;

export const TYPICAL_HUMBUCKER = `inductance at or near the published typical 4.7 H of a humbucker (R. Stanley, note on pickup parameters); ${MEASURED}; resistance and output are common practice, no source`;

/** Covered neck singles, wide singles and hot humbuckers. */
export const AS_MEASURED = `${MEASURED}; resistance and output are common practice, no source`;

export const WITHIN_RANGES = `${RANGES}; the values within those ranges are common practice, no source`;

/** Coil spacing, aperture and distances from the bridge are from memory: no published table was found. */
export const PLACES_BASIS = "distances from the bridge, coil spacing and apertures: from memory, no source";
