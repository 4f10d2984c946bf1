import { openScenario, whenOpen } from "../../page/actions.ts";
import type { usePage } from "../../page/browser.ts";
import type { Condition } from "./condition.ts";
import { type Turns, timeTurns } from "./knob-turns.ts";
import { type Loading, watchLoading, whenQuiet } from "./load-watch.ts";
import { type PanelTimes, timePanels } from "./panel-times.ts";
import { slowDown } from "./slow-down.ts";
import { prepareSoundWatch, type SoundTimes, timeSound } from "./sound-watch.ts";
import { followTraffic, type Traffic } from "./traffic.ts";

export interface VisitFigures {
  readonly loading: Loading;
  readonly traffic: Traffic;
  readonly sound: SoundTimes;
  readonly turns: Turns;
  readonly panels: PanelTimes;
}

/** How long a page has nothing to do before it counts as loaded. */
const QUIET_MS = 3000;

/** One fresh visit: the page loads, plays, has its knobs turned, its tabs opened and its plan changed. */
export async function measureVisit(site: ReturnType<typeof usePage>, condition: Condition): Promise<VisitFigures> {
  const { width, height, slowdown } = condition;
  let trafficSoFar: (() => Promise<Traffic>) | undefined;
  const { page, context } = await site.visit({
    width,
    height,
    isThrifty: false,
    ownWindow: true,
    before: async (blank) => {
      trafficSoFar = followTraffic(blank);
      await blank.addInitScript(watchLoading);
      await prepareSoundWatch(blank);
      if (slowdown > 1) await slowDown(blank, slowdown);
    },
  });
  await whenQuiet(page, QUIET_MS);
  await whenOpen(page);
  const loading = await page.evaluate(() => loadWatch.loading);
  const traffic = await trafficSoFar!();
  const sound = await timeSound(page);
  await openScenario(page, /HSS/);
  await whenQuiet(page, QUIET_MS / 3);
  const turns = await timeTurns(page);
  const panels = await timePanels(page);
  await context.close();
  return { loading, traffic, sound, turns, panels };
}
