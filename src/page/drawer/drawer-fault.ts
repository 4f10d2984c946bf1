import { drawerInput, type KeptDrawer } from "../../drawer/kept-drawer.ts";
import { faultLine } from "../../errors.ts";
import { benchEngineOf } from "../bench/bench-desk.ts";
import type { AppStore } from "../state/app-state.ts";

/** What is wrong with the parts of a drawer; empty where nothing is. */
export async function drawerFault(store: AppStore, drawer: KeptDrawer): Promise<string> {
  const reply = await benchEngineOf(store).drawer({ drawer: drawerInput(drawer), guards: [] });
  return "faults" in reply ? faultLine(reply.faults) : "";
}
