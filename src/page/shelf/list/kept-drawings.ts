import type { GuardLine } from "../../../shelf/guard.ts";
import { smallDrawing } from "../../drawing/small-drawing.ts";
import type { Bench } from "../../start/bench.ts";
import { toReading } from "../../start/open-build.ts";
import { type OpenShelf, shelfWithStorage } from "../open-shelf.ts";

type Asked = Pick<GuardLine, "id" | "fileMark">;

/** Kept drawings of another look are drawn anew. */
const LOOK = 2;

const markOf = ({ fileMark }: Asked) => `${LOOK} ${fileMark}`;

/** Of a guard whose build file cannot be read. */
const NONE = "";

async function fromStorage({ database }: OpenShelf, asked: Asked): Promise<string | undefined> {
  if (!database) return undefined;
  const kept = await (await database()).get("drawings", asked.id);
  return kept?.fileMark === markOf(asked) ? kept.svg : undefined;
}

async function intoStorage({ database }: OpenShelf, asked: Asked, svg: string): Promise<void> {
  if (database) await (await database()).put("drawings", { id: asked.id, fileMark: markOf(asked), svg });
}

async function made(bench: Bench, { shelf }: OpenShelf, { id }: Asked): Promise<string> {
  const reading = await shelf.build(id).then(
    (build) => toReading(bench, build),
    () => undefined,
  );
  return reading ? new XMLSerializer().serializeToString(smallDrawing(reading.build)) : NONE;
}

/**
 * A guard's small drawing as SVG text: kept from an earlier time, or made of its build file and kept.
 * @returns "" where the file cannot be read
 */
export async function keptDrawing(bench: Bench, line: Asked): Promise<string> {
  const open = await shelfWithStorage();
  const kept = await fromStorage(open, line).catch(() => undefined);
  if (kept !== undefined) return kept;
  const svg = await made(bench, open, line);
  // A storage that is full costs only that it is drawn again next time.
  await intoStorage(open, line, svg).catch(() => undefined);
  return svg;
}

/** The element of such a text. */
export function drawingElement(svg: string): Element | undefined {
  if (svg === NONE) return undefined;
  const { documentElement } = new DOMParser().parseFromString(svg, "image/svg+xml");
  return documentElement.localName === "svg" ? document.importNode(documentElement, true) : undefined;
}
