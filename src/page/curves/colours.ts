/** Colours of the drawing on canvas, taken from the style sheet so that light and dark have one home. */
export interface PlotColours {
  readonly ink: string;
  readonly grid: string;
  readonly current: string;
  readonly other: string;
  readonly familyFrom: string;
  readonly familyTo: string;
  readonly band: string;
  readonly paper: string;
}

export function plotColours(): PlotColours {
  const style = getComputedStyle(document.documentElement);
  const read = (name: string) => style.getPropertyValue(name).trim();
  return {
    ink: read("--ink-soft"),
    grid: read("--plot-grid"),
    current: read("--plot-current"),
    other: read("--plot-other"),
    familyFrom: read("--plot-family-from"),
    familyTo: read("--plot-family-to"),
    band: read("--plot-band"),
    paper: read("--panel"),
  };
}

function channels(hex: string): [number, number, number] {
  const value = Number.parseInt(hex.slice(1), 16);
  return [(value >> 16) & 255, (value >> 8) & 255, value & 255];
}

/** The shade a share of the way from one #rrggbb colour to another. */
export function shade(from: string, to: string, along: number): string {
  const [a, b] = [channels(from), channels(to)];
  const mixed = a.map((start, index) => Math.round(start + (b[index]! - start) * along));
  return `rgb(${mixed.join(" ")})`;
}
