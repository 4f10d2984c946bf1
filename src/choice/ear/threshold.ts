/**
 * Threshold of hearing in quiet, dB SPL of a tone (E. Terhardt, G. Stoll and M. Seewann, J. Acoust. Soc. Am. 71, 679, 1982, after
 * Terhardt, Hear. Res. 1, 155, 1979). @param frequencyHz 20 to 16000
 */
export function thresholdDb(frequencyHz: number): number {
  const khz = frequencyHz / 1000;
  return 3.64 * khz ** -0.8 - 6.5 * Math.exp(-0.6 * (khz - 3.3) ** 2) + 1e-3 * khz ** 4;
}
