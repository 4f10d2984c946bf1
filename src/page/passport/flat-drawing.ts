import type { PaperDrawing } from "../../contract/bench/passport.ts";

type Shape = PaperDrawing["shapes"][number];
type Matrix = readonly [number, number, number, number, number, number];

const round = (value: number) => Math.round(value * 1000) / 1000;

/** "rgb(1, 2, 3)" as "#010203"; undefined for none and for what is not seen. */
function hexOf(colour: string): string | undefined {
  const [red, green, blue, alpha = 1] = (/^rgba?\(([^)]*)\)/.exec(colour)?.[1] ?? "").split(/[\s,/]+/).map(Number);
  if (red === undefined || green === undefined || blue === undefined || alpha === 0) return undefined;
  return `#${[red, green, blue].map((part) => Math.round(part).toString(16).padStart(2, "0")).join("")}`;
}

/** The way about a circle: two halves, since an arc that ends where it begins is none. */
function circlePath(cx: number, cy: number, r: number): string {
  return `M${cx - r} ${cy}A${r} ${r} 0 1 1 ${cx + r} ${cy}A${r} ${r} 0 1 1 ${cx - r} ${cy}Z`;
}

function rectPath(x: number, y: number, width: number, height: number, corner: number): string {
  const r = Math.min(corner, width / 2, height / 2);
  if (r === 0) return `M${x} ${y}H${x + width}V${y + height}H${x}Z`;
  const turn = (toX: number, toY: number) => `A${r} ${r} 0 0 1 ${toX} ${toY}`;
  const [right, bottom] = [x + width, y + height];
  return `M${x + r} ${y}H${right - r}${turn(right, y + r)}V${bottom - r}${turn(right - r, bottom)}H${x + r}${turn(x, bottom - r)}V${y + r}${turn(x + r, y)}Z`;
}

function pathOf(element: SVGElement): string | undefined {
  const value = (name: string) => Number(element.getAttribute(name) ?? 0);
  if (element instanceof SVGPathElement) return element.getAttribute("d") ?? undefined;
  if (element instanceof SVGCircleElement) return circlePath(value("cx"), value("cy"), value("r"));
  if (element instanceof SVGRectElement)
    return rectPath(value("x"), value("y"), value("width"), value("height"), value("rx"));
  return undefined;
}

function lineShape(element: SVGElement, style: CSSStyleDeclaration, at: Matrix): Shape[] {
  const d = pathOf(element);
  const [stroke, fill] = [hexOf(style.stroke), hexOf(style.fill)];
  if (!d || (!stroke && !fill)) return [];
  const dash = style.strokeDasharray === "none" ? [] : style.strokeDasharray.split(/[\s,]+/).map(Number.parseFloat);
  return [
    {
      kind: "line",
      d,
      ...(stroke ? { stroke, width: Number.parseFloat(style.strokeWidth) } : {}),
      ...(fill ? { fill } : {}),
      ...(dash.length > 0 ? { dash } : {}),
      ...(style.strokeLinecap === "round" ? { round: true } : {}),
      at,
    },
  ];
}

function textShape(element: SVGTextContentElement, style: CSSStyleDeclaration, at: Matrix): Shape[] {
  const text = element.textContent ?? "";
  const count = element.getNumberOfChars();
  if (text.trim() === "" || count === 0) return [];
  const [from, to] = [element.getStartPositionOfChar(0), element.getEndPositionOfChar(count - 1)];
  const anchor = (["middle", "end"] as const).find((each) => each === style.textAnchor) ?? "start";
  const x = anchor === "middle" ? (from.x + to.x) / 2 : anchor === "end" ? to.x : from.x;
  const fill = hexOf(style.fill);
  return [
    {
      kind: "text",
      text,
      x: round(x),
      y: round(from.y),
      size: Number.parseFloat(style.fontSize),
      bold: Number(style.fontWeight) >= 600,
      anchor,
      ...(fill ? { fill } : {}),
      at,
    },
  ];
}

function isSeen(element: Element, style: CSSStyleDeclaration): boolean {
  return style.visibility !== "hidden" && style.display !== "none" && element.getClientRects().length > 0;
}

/** A drawing that stands on the page as lines and texts, as they look there. */
export function flatDrawing(svg: SVGSVGElement): PaperDrawing {
  const { x, y, width, height } = svg.viewBox.baseVal;
  const toDrawing = svg.getScreenCTM()!.inverse();
  const shapes = [...svg.querySelectorAll<SVGGraphicsElement>("path, circle, rect, text")].flatMap((element) => {
    const style = getComputedStyle(element);
    if (!isSeen(element, style)) return [];
    const { a, b, c, d, e, f } = toDrawing.multiply(element.getScreenCTM()!);
    const at = [a, b, c, d, e, f].map(round) as unknown as Matrix;
    return element instanceof SVGTextContentElement ? textShape(element, style, at) : lineShape(element, style, at);
  });
  return { box: [x, y, width, height], shapes };
}
