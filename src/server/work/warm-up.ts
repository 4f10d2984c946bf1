import { PATHS } from "../paths.ts";
import type { App } from "../routes/route-context.ts";
import { readScenarios } from "../shelves/scenario-shelf.ts";

/** Enough for the machine code of a turned knob to be there, and few enough not to be noticed. */
const TURNS = 60;
const DIAL_MAX = 10;

/**
 * Asks for a few curves before anybody else does, of the event loop and of a worker: the first take ten times as long as later ones.
 * @param app the service's routes in a service of their own, so that what it counts stays other people's
 */
export async function warmUp(app: App): Promise<void> {
  const [scenario] = readScenarios(PATHS.scenarios).values();
  if (!scenario) return;
  const ask = (question: object) =>
    app.inject({ method: "POST", url: "/api/response", payload: { build: scenario.build, ...question } });
  const sweep = ask({});
  for (let turn = 0; turn < TURNS; turn++) await ask({ settings: { tone: (DIAL_MAX * turn) / TURNS } });
  await sweep;
}
