import type { TapsRequest } from "../../contract/measure/taps.ts";
import { formChoice, formText } from "../fields/form-fields.ts";
import { ServiceProblem } from "../server/client.ts";

const TIMINGS = [
  { value: "plan", label: "at the times of the plan" },
  { value: "hand", label: "at times that I say" },
  { value: "pauses", label: "told by pauses; all were heard" },
] as const;

const PATH = "timing.times";

export type Timing = NonNullable<TapsRequest["timing"]>;

const secondsOf = (text: string): number | null | undefined => {
  if (/^[-–—−]$/.test(text)) return null;
  const [, minutes = "0", seconds] = /^(?:(\d+):(?=\d\d))?(\d+(?:[.,]\d+)?)$/.exec(text) ?? [];
  return seconds === undefined ? undefined : 60 * Number(minutes) + Number(seconds.replace(",", "."));
};

/**
 * "12.5, -, 0:20": seconds, or minutes and seconds, and a dash for a row that was silent.
 * @throws ServiceProblem naming what is none of them
 */
export function timesOf(text: string): (number | null)[] {
  const words = text.split(/[;\s]+|,(?=\s)/).filter((each) => each !== "");
  return words.map((word, i) => {
    const seconds = secondsOf(word);
    if (seconds !== undefined) return seconds;
    const message = `has "${word}" for step ${i + 1}; expected seconds such as 12.5, or 0:12, or - for a silent row`;
    throw new ServiceProblem("A time cannot be read", [{ path: PATH, message }]);
  });
}

/** How the steps of a file are told apart. */
export function timingFields() {
  const by = formChoice("timing.by", "In a file, the rows were tapped", TIMINGS);
  const times = formText(PATH, "When each step began, in seconds; - for a silent one", "", "2.5; 6.5; -; 14");
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
