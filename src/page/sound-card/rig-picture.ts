import { s } from "../dom/element.ts";
import type { Inputs } from "./channel-order.ts";

const box = (x: number, y: number, width: number, height: number, ...lines: string[]) =>
  s(
    "g",
    { class: "rig-box" },
    s("rect", { x, y, width, height, rx: 6 }),
    lines.map((text, i) =>
      s("text", { x: x + width / 2, y: y + height / 2 + 5 + 16 * (i - (lines.length - 1) / 2) }, text),
    ),
  );

const wires = (d: string, className = "rig-wire") => s("path", { d, class: className });

const joint = (x: number, y: number) => s("circle", { cx: x, cy: y, r: 4, class: "rig-joint" });

function picture(label: string, ...content: SVGElement[]): SVGElement {
  return s(
    "svg",
    { viewBox: "0 0 360 210", class: "rig-picture", role: "img", "aria-label": label },
    s("title", {}, label),
    content,
  );
}

/** A pickup under an exciter coil, with a load that comes for the later recordings. */
export function loadsPicture(): SVGElement {
  return picture(
    "The interface's output drives a small coil laid on the pickup. The pickup's hot lead goes to the instrument input's tip, its ground lead to the sleeve. The load hangs from tip to sleeve, in the later recordings only.",
    wires("M90 40H120M90 70H120"),
    wires("M200 130H290M200 180H290"),
    wires("M245 130V180", "rig-wire rig-later"),
    box(5, 25, 85, 60, "output"),
    box(120, 25, 90, 60, "exciter", "coil + 100 Ω"),
    s("path", { d: "M150 92V112M165 92V112M180 92V112", class: "rig-field" }),
    box(120, 118, 80, 74, "pickup"),
    box(206, 143, 78, 24, "load, later"),
    box(290, 118, 65, 74, "input", "1 MΩ"),
    joint(245, 130),
    joint(245, 180),
  );
}

/** A pickup with its metal under an exciter coil, and a coil without any that takes its place. */
export function metalPicture(): SVGElement {
  return picture(
    "The interface's output drives a small coil laid on the pickup, whose cover and base plate stay on. The pickup's hot lead goes to the instrument input's tip, its ground lead to the sleeve. For the last recording the reference coil, without metal, takes the pickup's place under the exciter and at the input.",
    wires("M90 30H120M90 60H120"),
    wires("M200 120H290M200 160H290"),
    wires("M105 192H245V120M105 203H260V160", "rig-wire rig-later"),
    box(5, 15, 85, 60, "output"),
    box(120, 15, 90, 60, "exciter", "coil + 100 Ω"),
    s("path", { d: "M150 80V98M165 80V98M180 80V98", class: "rig-field" }),
    box(120, 104, 80, 72, "pickup", "and metal"),
    box(5, 150, 100, 56, "reference", "coil, later"),
    box(290, 104, 65, 72, "input", "1 MΩ"),
    joint(245, 120),
    joint(260, 160),
  );
}

const note = (x: number, y: number, text: string) => s("text", { x, y, class: "rig-note" }, text);

/** A part behind a resistor, with an input on either side of it. */
export function resistorPicture(part: string, [before, behind]: Inputs): SVGElement {
  return picture(
    `The output's tip goes to the tip of ${before} and to the known resistor. The resistor's other end goes to the tip of ${behind} and to the ${part}. The ${part}'s other end meets the sleeves of output and inputs.`,
    wires("M90 95H150M220 95H285V130"),
    wires("M120 95V60M255 95V60"),
    wires("M47 120V195H285V172"),
    box(5, 70, 85, 50, "output"),
    box(150, 78, 70, 34, "resistor"),
    box(80, 15, 80, 45, before),
    box(215, 15, 80, 45, behind),
    box(215, 130, 140, 42, part),
    note(150, 188, "all sleeves meet here"),
    joint(120, 95),
    joint(255, 95),
  );
}

/** The known resistor between the output and a guard's jack, with an input on either side of it. */
export function jackPicture([before, behind]: Inputs): SVGElement {
  return picture(
    `The output's tip goes to the tip of ${before} and to the known resistor. The resistor's other end goes to the tip of ${behind} and to the tip of the guard's jack. The sleeves of output, inputs and jack all meet.`,
    wires("M85 95H130M200 95H270"),
    wires("M108 95V60M222 95V60"),
    wires("M42 120V165H270"),
    box(5, 70, 80, 50, "output"),
    box(130, 78, 70, 34, "resistor"),
    box(68, 15, 80, 45, before),
    box(182, 15, 80, 45, behind),
    box(270, 70, 85, 120, "the guard,", "at its jack"),
    note(255, 112, "tip"),
    note(248, 158, "sleeve"),
    note(135, 184, "all sleeves meet here"),
    joint(108, 95),
    joint(222, 95),
  );
}
