import type { Locator, Page } from "playwright-core";
import { positionChoice } from "../../page/actions.ts";

/** ms from just before a control's event until the page had changed, and until a frame that shows all of it was handed over. */
export interface Turn {
  readonly curveMs: number;
  readonly readoutMs: number;
  readonly drawingMs: number;
  readonly frameMs: number;
}

export interface Turns {
  readonly dials: readonly Turn[];
  readonly lever: readonly Turn[];
}

export const DIAL_TURNS = 60;
const TURNS_A_POSITION = 3;
export const LEVER_TURNS = DIAL_TURNS / TURNS_A_POSITION;

/** Both have coils under the first tone, so that all that is turned changes what is told of the curve. */
const POSITIONS = [2, 4];
const VOLUMES = [6, 8.5, 4.5, 7, 10];
const TONES = [3, 8, 5, 6.5, 10];

/** A person's pause, in which work that was put off is done. */
const PAUSE_MS = 150;

/** Runs in the browser. */
async function timeTurn(control: SVGElement | HTMLElement, value: number): Promise<Turn> {
  const PATIENCE_MS = 5000;
  const plot = document.querySelector(".plot")!;
  const readout = document.querySelector(".readout")!;
  const drawing = document.querySelector("svg.guard")!.parentElement!;
  const words = [plot.ariaLabel, readout.textContent];
  const changedAt = { curve: Number.NaN, readout: Number.NaN, drawing: Number.NaN };
  const observer = new MutationObserver((records) => {
    const now = performance.now();
    if (Number.isNaN(changedAt.curve) && plot.ariaLabel !== words[0]) changedAt.curve = now;
    if (Number.isNaN(changedAt.readout) && readout.textContent !== words[1]) changedAt.readout = now;
    const isDrawn = records.some(({ target }) => drawing.contains(target));
    if (Number.isNaN(changedAt.drawing) && isDrawn) changedAt.drawing = now;
  });
  observer.observe(plot, { attributeFilter: ["aria-label"] });
  for (const each of [readout, drawing])
    observer.observe(each, { subtree: true, childList: true, characterData: true, attributes: true });

  // A message posted at the beginning of a frame arrives once that frame has been handed over.
  const { port1: handedOver, port2: frameBegins } = new MessageChannel();
  const nextFrame = () => requestAnimationFrame(() => frameBegins.postMessage(undefined));
  const start = performance.now();
  const frameAt = new Promise<number>((resolve, reject) => {
    handedOver.onmessage = () => {
      const now = performance.now();
      const missing = Object.entries(changedAt).flatMap(([what, at]) => (Number.isNaN(at) ? [what] : []));
      if (missing.length === 0) resolve(now);
      else if (now - start > PATIENCE_MS) reject(new Error(`at ${value} the page left as it was: ${missing}`));
      else nextFrame();
    };
  });
  nextFrame();
  const input = control as HTMLInputElement;
  if (input.type === "radio") input.click();
  else {
    input.value = String(value);
    input.dispatchEvent(new Event("input", { bubbles: true }));
  }
  const frameMs = (await frameAt) - start;
  observer.disconnect();
  handedOver.close();
  const since = (at: number) => at - start;
  return {
    curveMs: since(changedAt.curve),
    readoutMs: since(changedAt.readout),
    drawingMs: since(changedAt.drawing),
    frameMs,
  };
}

/** Turns volume and tone by turns, and the lever now and then, on a guard that has a volume, a tone and a lever. */
export async function timeTurns(page: Page): Promise<Turns> {
  // A pointer that rests on the plot would have the readout tell levels in place of the curve's features.
  await page.mouse.move(0, 0);
  const volume = page.getByRole("slider", { name: /^Volume/ });
  const tone = page.getByRole("slider", { name: /^Tone/ }).first();
  const turn = async (control: Locator, value: number) => {
    await page.waitForTimeout(PAUSE_MS);
    return control.evaluate(timeTurn, value);
  };
  const dials: Turn[] = [];
  const lever: Turn[] = [];
  for (let n = 0; n < DIAL_TURNS; n++) {
    const position = POSITIONS[lever.length % POSITIONS.length]!;
    if (n % TURNS_A_POSITION === 0) lever.push(await turn(positionChoice(page, position), position));
    const [dial, values] = n % 2 === 0 ? [volume, VOLUMES] : [tone, TONES];
    dials.push(await turn(dial, values[Math.floor(n / 2) % values.length]!));
  }
  return { dials, lever };
}
