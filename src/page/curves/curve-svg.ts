import type { PlotColours } from "./colours.ts";
import { shade } from "./colours.ts";
import { isOtherBuild } from "./family.ts";
import { FREQUENCIES_HZ } from "./frequencies.ts";
import { levelRangeDb, levelWords, referenceLevelDb, shownLevels } from "./levels.ts";
import { CUTOFF_DB } from "./marks.ts";
import type { Picture } from "./picture.ts";
import { FREQUENCY_TICKS_HZ, showDb, showHz, tickHz } from "./units.ts";

const SIZE = { width: 960, height: 540, left: 64, right: 20, top: 40, bottom: 48 } as const;
const LEVEL_STEP_DB = 6;

const xOf = (hertz: number) => SIZE.left + (Math.log10(hertz / 20) / 3) * (SIZE.width - SIZE.left - SIZE.right);

function yAxis([low, high]: readonly [number, number]): (decibels: number) => number {
  return (decibels) => SIZE.top + ((high - decibels) / (high - low)) * (SIZE.height - SIZE.top - SIZE.bottom);
}

function escaped(text: string): string {
  return text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;").replaceAll('"', "&quot;");
}

function line(levels: ArrayLike<number>, y: (decibels: number) => number, stroke: string, rest: string): string {
  const points = Array.from(levels, (level, i) => `${xOf(FREQUENCIES_HZ[i]!).toFixed(1)} ${y(level).toFixed(1)}`);
  return `<path d="M${points.join("L")}" fill="none" stroke="${stroke}" ${rest}/>`;
}

function grid(y: (decibels: number) => number, [low, high]: readonly [number, number], colours: PlotColours): string[] {
  const bottom = SIZE.height - SIZE.bottom;
  const vertical = FREQUENCY_TICKS_HZ.map((hertz) => {
    const x = xOf(hertz).toFixed(1);
    return `<path d="M${x} ${SIZE.top}V${bottom}" stroke="${colours.grid}"/><text x="${x}" y="${bottom + 18}" text-anchor="middle">${tickHz(hertz)}</text>`;
  });
  const horizontal = Array.from({ length: (high - low) / LEVEL_STEP_DB + 1 }, (_, index) => {
    const level = low + index * LEVEL_STEP_DB;
    const at = y(level).toFixed(1);
    return `<path d="M${SIZE.left} ${at}H${SIZE.width - SIZE.right}" stroke="${colours.grid}"/><text x="${SIZE.left - 8}" y="${Number(at) + 4}" text-anchor="end">${level > 0 ? `+${level}` : `${level}`.replace("-", "−")}</text>`;
  });
  return [...vertical, ...horizontal];
}

function caption(picture: Picture): string {
  const { peak, cutoff } = picture.family.current;
  const parts = [
    ...(peak ? [`peak ${showHz(peak.frequency)}, ${showDb(peak.level)}`] : []),
    ...(cutoff === null ? [] : [`3 dB down at ${showHz(cutoff)}`]),
  ];
  return parts.join("; ");
}

/** The tolerance band, and circle and line for peak and cutoff, as on the page. */
function marks(
  picture: Picture,
  y: (decibels: number) => number,
  colours: PlotColours,
): { band: string; over: string } {
  const { band, family, view } = picture;
  const { magnitude, peak, cutoff } = family.current;
  const reference = referenceLevelDb(magnitude);
  const offset = view === "true" ? 0 : reference;
  const edge = (levels: readonly number[]) =>
    levels.map((level, i) => `${xOf(band!.frequencies[i]!).toFixed(1)} ${y(level - offset).toFixed(1)}`);
  const outline = band ? [...edge(band.high), ...edge(band.low).reverse()].join("L") : "";
  const circle = peak
    ? `<circle cx="${xOf(peak.frequency).toFixed(1)}" cy="${y(peak.level + reference - offset).toFixed(1)}" r="5" fill="${colours.paper}" stroke="${colours.current}" stroke-width="2"/>`
    : "";
  const drop =
    cutoff === null
      ? ""
      : `M${xOf(cutoff).toFixed(1)} ${y(reference + CUTOFF_DB - offset).toFixed(1)}V${SIZE.height - SIZE.bottom}`;
  return {
    band: outline && `<path d="M${outline}Z" fill="${colours.band}"/>`,
    over: `${circle}${drop && `<path d="${drop}" stroke="${colours.current}" stroke-dasharray="3 4"/>`}`,
  };
}

/** The picture as an SVG document of its own. */
export function curveSvg(picture: Picture, title: string, colours: PlotColours): string {
  const { family, view } = picture;
  const all = [...family.behind, family.current].map((trace) => shownLevels(trace, view));
  const range = levelRangeDb(all);
  const y = yAxis(range);
  const behind = family.behind.map((trace, index) => {
    const isOther = isOtherBuild(trace);
    const stroke = isOther ? colours.other : shade(colours.familyFrom, colours.familyTo, trace.along);
    return line(all[index]!, y, stroke, isOther ? 'stroke-width="2" stroke-dasharray="8 5"' : "");
  });
  const current = line(all.at(-1)!, y, colours.current, 'stroke-width="3"');
  const drawn = marks(picture, y, colours);
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${SIZE.width} ${SIZE.height}" font-family="sans-serif" font-size="13" fill="${colours.ink}">`,
    `<rect width="100%" height="100%" fill="${colours.paper}"/>`,
    `<text x="${SIZE.left}" y="24" font-size="16">${escaped(title)}</text>`,
    `<text x="${SIZE.width - SIZE.right}" y="24" text-anchor="end">${caption(picture)}</text>`,
    `<clipPath id="frame"><rect x="${SIZE.left}" y="${SIZE.top}" width="${SIZE.width - SIZE.left - SIZE.right}" height="${SIZE.height - SIZE.top - SIZE.bottom}"/></clipPath>`,
    ...grid(y, range, colours),
    `<g clip-path="url(#frame)">`,
    drawn.band,
    ...behind,
    current,
    drawn.over,
    "</g>",
    `<text x="${SIZE.width / 2}" y="${SIZE.height - 8}" text-anchor="middle">frequency, Hz</text>`,
    `<text transform="translate(18 ${SIZE.height / 2}) rotate(-90)" text-anchor="middle">${levelWords(view)}</text>`,
    "</svg>",
  ].join("\n");
}
