/** A ringing low-pass with an echo: something like a cabinet, and nothing above 15 kHz worth mention. */
export function response(rate: number, seconds = 0.05): Float32Array {
  return Float32Array.from({ length: Math.round(rate * seconds) }, (_, n) => {
    const t = n / rate;
    const ring = (from: number, hertz: number, decay: number) =>
      t < from ? 0 : (t - from) ** 2 * Math.exp(-(t - from) * decay) * Math.sin(2 * Math.PI * hertz * (t - from));
    return 5e5 * (ring(0.001, 2500, 4000) + 0.3 * ring(0.004, 700, 2500));
  });
}
