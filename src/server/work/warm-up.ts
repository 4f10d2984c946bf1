import { PATHS } from "../paths.ts";
import type { App } from "../routes/route-context.ts";
import { readScenarios } from "../shelves/scenario-shelf.ts";

/** Enough for the machine code of a turned knob to be there, and few enough not to be noticed. */
const TURNS = 60;
const DIAL_MAX = 10;

/** Asks for a few curves before anybody else does, of the event loop and of a worker: the first take ten times as long as later ones. */
export async function warmUp(app: App): Promise<void> {
  const [scenario] = readScenarios(PATHS.scenarios).values();
  if (!scenario) return;
  const ask = (question: object) =>
    app.inject({ method: "POST", url: "/api/response", payload: { build: scenario.build, ...question } });
  // Nobody asked for these, and their lines would bury the address that a person waits for.
  const { level } = app.log;
  if (["trace", "debug", "info"].includes(level)) app.log.level = "warn";
  try {
    const sweep = ask({});
    for (let turn = 0; turn < TURNS; turn++) await ask({ settings: { tone: (DIAL_MAX * turn) / TURNS } });
    await sweep;
  } finally {
    app.log.level = level;
  }
}
