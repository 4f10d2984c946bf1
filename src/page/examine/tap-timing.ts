import type { TapsRequest } from "../../contract/measure/taps.ts";
import { formChoice, formText } from "../fields/form-fields.ts";

const TIMINGS = [
  { value: "plan", label: "at the plan's times, counted from the first tap" },
  { value: "hand", label: "at times that I say" },
  { value: "pauses", label: "by the pauses alone: every row was heard" },
] as const;

export type Timing = NonNullable<TapsRequest["timing"]>;

/** "12.5, -, 20": seconds, and what stands for no number is a row that was silent. */
const timesOf = (text: string): (number | null)[] =>
  text
    .split(/[;\s]+|,(?=\s)/)
    .filter((each) => each !== "")
    .map((each) => (/^\d/.test(each) ? Number(each.replace(",", ".")) : null));

/** How the steps of a file are told apart. */
export function timingFields() {
  const by = formChoice("timing.by", "In a file, the rows were tapped", TIMINGS);
  const times = formText("timing.times", "When each step began, in seconds; - for a silent one", "", "2.5; 6.5; -; 14");
  const show = () => {
    times.element.hidden = by.read() !== "hand";
  };
  by.element.addEventListener("change", show);
  show();
  return {
    fields: [by, times],
    read: (): Timing =>
      by.read() === "hand" ? { by: "hand", times: timesOf(times.read()) } : { by: by.read() as "plan" },
  };
}
