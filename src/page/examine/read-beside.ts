import type { ExamineRequest } from "../../contract/examine/examine-request.ts";

/** What was typed in beside the meter, which is weighed together with what is recorded. */
export type ReadBeside = () => Pick<ExamineRequest, "readings" | "joints" | "temperature" | "meter">;
