import type { PreviewsRequest } from "../../contract/previews.ts";
import { chainSuffix } from "../../listening/names.ts";
import { h } from "../dom/element.ts";
import { postForBytes } from "../server/client.ts";
import { fileStem, saveFile } from "../server/save-file.ts";
import type { AppStore } from "../state/app-state.ts";
import { askedSignal } from "./asked-signal.ts";
import { requestedChain } from "./chain/asked-chain.ts";

async function downloadSet(store: AppStore): Promise<void> {
  const { reading } = store.state;
  if (!reading) return;
  const { ownSound, levelMatched, noise } = store.state;
  const { listening, file: cabinet } = requestedChain(store.state);
  const request: PreviewsRequest = {
    build: reading.source,
    level: levelMatched ? "matched" : "true",
    ...(ownSound ? {} : askedSignal(store.state)),
    ...(listening && { listening }),
    ...(noise !== "off" && { noise: { hum: noise, hiss: true } }),
  };
  const zip = await postForBytes("/api/previews", request, { signal: ownSound?.file, cabinet });
  const through = listening ? chainSuffix({ ...listening, cabinet }) : "";
  saveFile(`${fileStem(reading.source.title)}-previews${through}.zip`, new Blob([zip], { type: "application/zip" }));
}

/** Every position × tone as WAVs with the curves, in one ZIP. */
export function createDownloadSet(store: AppStore): HTMLElement {
  const button = h("button", { type: "button" }, "All settings as ZIP");
  button.addEventListener("click", async () => {
    button.disabled = true;
    store.set({ notice: "Rendering every position and tone setting…" });
    try {
      await downloadSet(store);
      store.set({ notice: "The ZIP is ready: a WAV for every setting, with the curves." });
    } catch (error) {
      store.set({ notice: (error as Error).message });
    } finally {
      button.disabled = false;
    }
  });
  return button;
}
