import { SoundEngine } from "../sound/sound-engine.ts";
import type { AppStore } from "../state/app-state.ts";
import { AudioRoom } from "./audio-room.ts";
import { Listening } from "./listening.ts";
import { createPlayBar } from "./play-bar.ts";

/** All that it takes to hear a guard. */
export function createSounding(store: AppStore) {
  const room = new AudioRoom(store, new SoundEngine());
  const listening = new Listening(store, room);
  return { room, listening, playBar: createPlayBar(store, listening, room) };
}
