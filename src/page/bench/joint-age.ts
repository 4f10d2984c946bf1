import type { DiagnoseRequest } from "../../contract/diagnose.ts";
import { type FormField, formChoice } from "../fields/form-fields.ts";
import type { Option } from "../fields/plain-fields.ts";

type Joints = NonNullable<DiagnoseRequest["joints"]>;

const AGES: readonly Option<Joints | "">[] = [
  { value: "", label: "not said" },
  { value: "new", label: "just soldered, it never worked yet" },
  { value: "old", label: "old, it worked before" },
];

/** How old the joints are, which says whether a joint or a part is the likelier culprit. */
export function createJointAge(): FormField<Joints | ""> {
  return formChoice("joints", "The joints are", AGES);
}
