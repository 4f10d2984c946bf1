import type uPlot from "uplot";
import { plotColours } from "../../curves/colours.ts";
import { FEW_FREQUENCY_TICKS_HZ, FREQUENCY_TICKS_HZ, tickHz } from "../../curves/units.ts";

const FONT = "12px system-ui, sans-serif";
const NARROW = 420;

/** Frequency and level. @param width of the plot, px */
export function axesOf(width: number): uPlot.Axis[] {
  const { ink, grid } = plotColours();
  const look = {
    stroke: ink,
    font: FONT,
    labelFont: FONT,
    labelSize: 18,
    grid: { stroke: grid, width: 1 },
    ticks: { show: false },
  };
  const ticksHz = width < NARROW ? FEW_FREQUENCY_TICKS_HZ : FREQUENCY_TICKS_HZ;
  return [
    {
      ...look,
      scale: "x",
      label: "frequency, Hz",
      splits: () => ticksHz,
      filter: (_, splits) => splits,
      values: (_, splits) => splits.map(tickHz),
      size: 30,
    },
    {
      ...look,
      scale: "y",
      label: "level over 200 Hz, dB",
      values: (_, splits) => splits.map((value) => (value > 0 ? `+${value}` : `${value}`.replace("-", "−"))),
      size: 42,
    },
  ];
}
