import { Socket } from "node:net";
import { MIN_BODY_BYTES_PER_SECOND } from "../../limits.ts";
import type { App } from "../routes/route-context.ts";
import { whenClosed } from "./when-closed.ts";

export interface BodyPace {
  readonly bytesPerSecond: number;
  readonly windowMs: number;
}

const USUAL_PACE: BodyPace = { bytesPerSecond: MIN_BODY_BYTES_PER_SECOND, windowMs: 5_000 };
/** One window may be slow because this process was late to read, or because the line was lost for a moment. */
const SLOW_WINDOWS = 2;

function watch(socket: Socket, { bytesPerSecond, windowMs }: BodyPace, isWhole: () => boolean, onSlow: () => void) {
  const least = (bytesPerSecond * windowMs) / 1_000;
  let read = socket.bytesRead;
  let slow = 0;
  const timer = setInterval(() => {
    if (isWhole()) return clearInterval(timer);
    slow = socket.bytesRead - read < least ? slow + 1 : 0;
    read = socket.bytesRead;
    if (slow < SLOW_WINDOWS) return;
    clearInterval(timer);
    onSlow();
  }, windowMs);
  return () => clearInterval(timer);
}

/** Ends requests whose body comes too slowly, with 408 (RFC 9110, 15.5.9), as Node does where the whole takes too long. */
export function endSlowBodies(app: App, pace: BodyPace = USUAL_PACE): void {
  app.addHook("onRequest", async ({ raw }, reply) => {
    const { socket } = raw;
    if (raw.complete || !(socket instanceof Socket)) return;
    const tooSlow = () => {
      const error = Object.assign(new Error("the body came too slowly"), { code: "ERR_HTTP_REQUEST_TIMEOUT" });
      app.server.emit("clientError", error, socket);
    };
    whenClosed(
      reply,
      watch(socket, pace, () => raw.complete, tooSlow),
    );
  });
}
