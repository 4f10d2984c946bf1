import { PATHS } from "./paths.ts";
import type { App } from "./route-context.ts";
import { readScenarios } from "./scenario-shelf.ts";

/** Enough curves for the machine code to be there, and few enough not to be noticed. */
const TONES = [0, 2, 4, 6, 8, 10];
const ROUNDS = 3;

/** Asks for a few curves before anybody else does: the first ones take ten times as long as any later one. */
export async function warmUp(app: App): Promise<void> {
  const [scenario] = readScenarios(PATHS.scenarios).values();
  if (!scenario) return;
  for (let round = 0; round < ROUNDS; round++)
    await app.inject({
      method: "POST",
      url: "/api/response",
      payload: { build: scenario.build, sweep: { tone: TONES } },
    });
}
