import type { TemplateDrawing } from "../../bench/room/template/drawing.ts";
import { BAR_MM, BAR_WORDS, SIDE_WORDS, type TemplateSheet, templateSheet } from "./template-sheet.ts";

/** Millimetres under the drawing, for the bar and its words. */
const FOOT = 18;
/** Wide enough for the bar's words. */
const LEAST_WIDTH = 130;

const STYLE =
  "path,circle,line{fill:none;stroke:#000;stroke-width:.25}.cavity{stroke-dasharray:3 1.5}.axis{stroke-dasharray:8 1.5 1.5 1.5;stroke-width:.15}.bar{fill:#000}text{font:3px sans-serif}";

/** XML 1.0 has no way to write these (section 2.2, Char). */
const UNWRITABLE = /[\p{Cc}\p{Cs}\uFFFE\uFFFF]/gu;

const escaped = (text: string) =>
  text.replace(UNWRITABLE, " ").replace(/[&<>"]/g, (sign) => `&#${sign.charCodeAt(0)};`);

const line = (name: string, x1: number, y1: number, x2: number, y2: number) =>
  `<line class="${name}" x1="${x1}" y1="${y1}" x2="${x2}" y2="${y2}"/>`;

const text = (x: number, y: number, words: string) => `<text x="${x}" y="${y}">${escaped(words)}</text>`;

/** A cross where a middle is. */
const cross = ({ x, y }: TemplateSheet["bridge"]) =>
  line("middle", x - 2, y, x + 2, y) + line("middle", x, y - 2, x, y + 2);

function content({ lines, circles, named, bridge, width, height }: TemplateSheet): string[] {
  return [
    ...lines.map(({ what, points }) => {
      const path = points.map(({ x, y }) => `${x} ${y}`).join("L");
      return `<path class="${what}" d="M${path}Z"/>`;
    }),
    ...circles.map(
      ({ what, centre, radius }) => `<circle class="${what}" cx="${centre.x}" cy="${centre.y}" r="${radius}"/>`,
    ),
    ...named.map(({ at, text: name, words }) => cross(at) + text(words.x, words.y, name)),
    line("axis", 0, bridge.y, width, bridge.y),
    line("axis", bridge.x, 0, bridge.x, height),
    text(2, bridge.y - 1, "centre line"),
    text(bridge.x + 1, 4, "bridge line"),
  ];
}

/** The template at 1:1, its size in millimetres. */
export function templateSvg(drawing: TemplateDrawing): string {
  const sheet = templateSheet(drawing);
  const [width, height] = [Math.max(sheet.width, LEAST_WIDTH), sheet.height + FOOT];
  const bar = `<rect class="bar" x="8" y="${sheet.height + 3}" width="${BAR_MM}" height="1.5"/>`;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}">`,
    `<title>${escaped(sheet.title)}</title><style>${STYLE}</style>`,
    ...content(sheet),
    bar,
    text(8, sheet.height + 9, BAR_WORDS),
    text(8, sheet.height + 14, `${sheet.title}. ${SIDE_WORDS}`),
    "</svg>",
  ].join("\n");
}
