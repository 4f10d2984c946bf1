import { TEST_SIGNALS } from "../../audio/signals.ts";
import type { Playing } from "../../render/playing.ts";
import type { AppState } from "../state/app-state.ts";

/** Whether what is chosen is a phrase, which a hand plays on strings. */
export function isPhrase({ signal, ownSound }: Pick<AppState, "signal" | "ownSound">): boolean {
  return signal !== "" && ownSound === undefined && !(TEST_SIGNALS as readonly string[]).includes(signal);
}

/** What is played, as a request says it; nothing before anything is chosen. */
export function askedSignal(state: AppState): { readonly signal?: string } & Playing {
  const { signal, hand, stringAge: strings } = state;
  if (!signal) return {};
  return isPhrase({ signal, ownSound: undefined }) ? { signal, hand, strings } : { signal };
}
