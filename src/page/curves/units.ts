/** "4.12 kHz", "640 Hz". */
export function showHz(hertz: number): string {
  return hertz >= 1000 ? `${(hertz / 1000).toFixed(2)} kHz` : `${hertz.toFixed(hertz < 100 ? 1 : 0)} Hz`;
}

/** "+3.2 dB", "−0.4 dB", with a true minus sign. */
export function showDb(decibels: number, digits = 1): string {
  const rounded = Number(decibels.toFixed(digits));
  const sign = rounded > 0 ? "+" : rounded < 0 ? "−" : "";
  return `${sign}${Math.abs(rounded).toFixed(digits)} dB`;
}

/** Far under any hum that two real coils leave. */
const NO_HUM_DB = -100;

/** "−4.9 dB" beside one reference single coil, or "none". @param hum null where none is left */
export function showHum(hum: number | null): string {
  return hum === null || hum < NO_HUM_DB ? "none" : showDb(hum);
}

/** Tick labels of the frequency axis: "50", "2k". */
export function tickHz(hertz: number): string {
  return hertz >= 1000 ? `${hertz / 1000}k` : String(hertz);
}

/** Where there is room for a few only. */
export const FEW_FREQUENCY_TICKS_HZ = [50, 200, 1000, 5000, 20_000];
export const FREQUENCY_TICKS_HZ = [20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000, 20_000];
