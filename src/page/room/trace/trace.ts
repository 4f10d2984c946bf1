import { DEFAULT_TOLERANCE_METRES } from "../../../bench/room/measures.ts";
import {
  inGuardFrame,
  type Marks,
  metresPerPixel,
  type Pixel,
  traceTolerance,
} from "../../../bench/room/photo-frame.ts";
import { pointsText } from "../millimetres.ts";

/** What was marked in a photograph: the first two places are the marks, the rest the line. */
export interface Trace {
  readonly places: readonly Pixel[];
  /** Metres; nothing while it is not said. */
  readonly apart: number | undefined;
  readonly fromBridge: number;
}

export const MARKS = 2;
/** Marks nearer to each other than this give no scale worth having. */
const LEAST_SPAN_PIXELS = 20;

/** The line as numbers, and by how much it may be off: millimetres as text. */
export interface TracedLine {
  readonly text: string;
  readonly off: string;
}

function marksOf({ places, apart, fromBridge }: Trace): Marks | undefined {
  const [first, second] = places;
  if (!first || !second || apart === undefined) return undefined;
  const span = Math.hypot(second.x - first.x, second.y - first.y);
  return span >= LEAST_SPAN_PIXELS ? { first, second, apart, fromBridge } : undefined;
}

const mmText = (metres: number) => String(Number((metres * 1000).toFixed(2)));

/** @param pixels of the photograph by which a place may be off: one of the screen's or its own */
export function tracedLine(trace: Trace, pixels: number): TracedLine | undefined {
  const marks = marksOf(trace);
  const line = trace.places.slice(MARKS);
  if (!marks || line.length < 3) return undefined;
  const off = traceTolerance(marks, line, { pixels, apart: DEFAULT_TOLERANCE_METRES });
  return { text: pointsText(line.map((place) => inGuardFrame(marks, place))), off: mmText(off) };
}

/** What is to be done next, or what has come of it. */
export function traceWords(trace: Trace, pixels: number): string {
  const { places, apart } = trace;
  if (places.length === 0) return "Click on the centre line at the bridge, or as far from it as you say above.";
  if (places.length === 1)
    return "Click on the centre line a second time, nearer the neck and as far away as you can measure.";
  if (apart === undefined) return "Say how far the two marks are from each other on the body.";
  const marks = marksOf(trace);
  if (!marks) return "The two marks lie too near each other; drag them apart.";
  const scale = `A pixel is ${mmText(metresPerPixel(marks))} mm.`;
  const traced = tracedLine(trace, pixels);
  if (!traced) return `${scale} Click along the edge of the cavity, at least three times.`;
  return `${scale} The line may be off by ${traced.off} mm: a click by a pixel, the distance of the marks by ${mmText(DEFAULT_TOLERANCE_METRES)} mm. A photograph taken aslant is off by more.`;
}
