import type { MeasureAnswer, MeasureRequest, RecordingName } from "../../contract/measure/measure.ts";
import { ask } from "../server/client.ts";

/** @throws ServiceProblem naming the field or the file at fault */
export async function askMeasure(
  request: MeasureRequest,
  files: readonly (readonly [RecordingName, File])[],
): Promise<MeasureAnswer> {
  const form = new FormData();
  form.set("request", JSON.stringify(request));
  for (const [name, file] of files) form.set(name, file);
  return (await ask("/api/measure", { method: "POST", body: form })).json() as Promise<MeasureAnswer>;
}
