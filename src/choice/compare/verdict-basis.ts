/** What every verdict rests on, told with it. */
export const VERDICT_BASIS =
  "The strings are played (the usual phrase, or the signal asked for) and heard through a 12-inch guitar speaker: a high-pass about" +
  " 100 Hz, a rise about 3 kHz, and an end at 5 kHz. Loudness is matched (K-weighting of ITU-R BS.1770) at 80 dB, a choice. Energy" +
  " spreads as in the ear's filters (Glasberg and Moore 1990), so that loud bands mask soft ones beside them, over the threshold of" +
  " hearing (Terhardt, Stoll and Seewann 1982) and a quiet room of 20 dB in each band, a choice: what strings and speaker leave too" +
  " soft to be heard weighs nothing. The largest difference left in any ERB band (ANSI/ASA S3.4-2007) is held against the" +
  " just-noticeable change of level, 0.5 dB at best and 1.25 dB usually (Jesteadt, Wier and Green 1977, from memory); 3 dB and 6 dB" +
  " are this service's own marks for plain and for another sound. A peak's shift is given in just-noticeable steps of 0.079·Fr/√Q" +
  " (Gagné and Zurek 1988, measured at 300–2000 Hz and Q 1–36, extrapolated beyond), none of them under the 1.5 % of trained" +
  " listeners (Kewley-Port and Watson 1994, from memory), and only where there is a peak, Q 1 or more.";
