import type { Departure } from "../departures/departure.ts";
import type { Point } from "../model/point.ts";
import { FIRST_FLOOR } from "./floor.ts";
import type { Stages } from "./stages.ts";
import { pointAbout, startedPoint } from "./starting-points.ts";
import type { Weighed } from "./weighed.ts";

/** Where another guard's parts are, and a name for it: no two points share one. */
export interface About {
  readonly point: Point;
  readonly name: string;
}

function lookAt(stages: Stages, departure: Departure, start: readonly number[]): Weighed {
  const nominal = stages.nominalOf(departure);
  const point = startedPoint(nominal, departure, start);
  const isNominal = point === nominal && departure.added.length === 0;
  return { departure, point, fit: stages.fitAt(departure, point, FIRST_FLOOR, isNominal ? "drawn" : undefined) };
}

function lookAbout(stages: Stages, departure: Departure, start: readonly number[], about: About): Weighed {
  const nominal = stages.nominalOf(departure);
  const begun = startedPoint(nominal, departure, start);
  const isPlain = begun === nominal && departure.added.length === 0;
  const point = isPlain ? about.point : pointAbout(begun, about.point);
  return { departure, point, fit: stages.fitAt(departure, point, FIRST_FLOOR, isPlain ? about.name : undefined) };
}

const bestOf = (looks: readonly Weighed[]) => looks.reduce((best, each) => (each.fit.log > best.fit.log ? each : best));

/** Linear about the drawing; the start that fits best. */
export const fromDrawing = (stages: Stages, departure: Departure): Weighed =>
  bestOf(departure.starts.map((start) => lookAt(stages, departure, start)));

/** The same, and about where another guard's parts are likeliest. */
export function firstLook(stages: Stages, departure: Departure, about?: About): Weighed {
  if (!about) return fromDrawing(stages, departure);
  return bestOf([
    fromDrawing(stages, departure),
    ...departure.starts.map((start) => lookAbout(stages, departure, start, about)),
  ]);
}
