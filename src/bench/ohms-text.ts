/** "250 kΩ": ohms with the prefix that leaves 1 to 999, to so many significant figures. */
export function ohmsText(ohms: number, figures: number): string {
  const [scale, unit] = ohms >= 1e6 ? [1e6, "MΩ"] : ohms >= 1e3 ? [1e3, "kΩ"] : [1, "Ω"];
  return `${Number((ohms / scale).toPrecision(figures))} ${unit}`;
}
