import type { MeasureRequest } from "../../contract/measure/measure.ts";
import { ServiceProblem } from "../server/client.ts";
import type { RecordingSlot } from "./recording-slot.ts";

const shown = (decibels: number) => `${String(decibels).replace("-", "−")} dB`;

/** Of another coil, whose level as a whole is free. */
const OF_ITS_OWN = "referenceCoil";

/**
 * A pickup's recordings are compared with each other, so that an output turned in between would pass for a load; where the output
 * itself is recorded too, it cancels.
 * @throws ServiceProblem at each recording that was made at another level than the first
 */
export function requireOneLevel(
  request: MeasureRequest,
  slots: readonly Pick<RecordingSlot, "path" | "decibels">[],
): void {
  if (request.method === "series-resistor" || (request.method === "two-loads" && request.reference)) return;
  const made = slots.flatMap(({ path, decibels }) =>
    decibels === undefined || path === OF_ITS_OWN ? [] : [{ path, decibels }],
  );
  const first = made[0]?.decibels;
  const faults = made.flatMap(({ path, decibels }) =>
    decibels === first
      ? []
      : [
          {
            path,
            message: `was recorded with the output at ${shown(decibels)} and the first at ${shown(first!)}; record both at one level`,
          },
        ],
  );
  if (faults.length > 0) throw new ServiceProblem("The recordings were made at different levels", faults);
}
