import type { Passport } from "../../bench/passport/passport.ts";
import { millimetresText } from "../../lengths.ts";
import { type Child, h } from "../dom/element.ts";

function rows(title: string, lines: readonly (readonly [string, Child])[]): HTMLElement | undefined {
  if (lines.length === 0) return undefined;
  return h(
    "section",
    { class: "paper-block" },
    h("h4", {}, title),
    h(
      "dl",
      {},
      lines.map(([name, text]) => h("div", {}, h("dt", {}, name), h("dd", {}, text))),
    ),
  );
}

type Reading = Passport["readings"][number];

function readingText({ noted, should, shows, fits }: Reading): Child {
  const verdict = fits === null ? "" : fits ? ": fits" : ": does not fit";
  return [h("b", {}, noted ?? "______"), ` (${[should, shows].filter(Boolean).join("; ")}${verdict})`];
}

/** The passport as it looks on paper. */
export function passportView(passport: Passport, drawing: SVGElement | undefined, code: HTMLElement): HTMLElement {
  const { title, guitar, date, temperature, notes, positions, parts, readings, heights, staysOver } = passport;
  const facts = [guitar && `In: ${guitar}`, date && `Date: ${date}`, `Measured at ${temperature} °C`].filter(Boolean);
  return h(
    "article",
    { class: "paper passport", "aria-label": "The passport" },
    h(
      "header",
      {},
      h(
        "div",
        {},
        h("h3", {}, title || "Guard"),
        facts.map((text) => h("p", {}, text)),
      ),
      code,
    ),
    drawing,
    h(
      "div",
      { class: "paper-columns" },
      rows(
        "Parts",
        parts.map(({ name, what }) => [name, what]),
      ),
      rows(
        "What each position sounds",
        positions.map(({ position, sounds }) => [position, sounds]),
      ),
      rows(
        "Readings, tip to sleeve, dials at 10",
        readings.map((each) => [each.where, readingText(each)]),
      ),
      rows(
        "Heights, strings pressed at the last fret",
        heights.map(({ name, bass, treble }) => [
          name,
          `bass ${millimetresText(bass)}, treble ${millimetresText(treble)}`,
        ]),
      ),
      rows(
        "Stays over in the drawer",
        staysOver.map(({ what, quantity }) => [`${quantity} ×`, what]),
      ),
      notes !== null && rows("Notes", [["", notes]]),
    ),
  );
}
