import type { App } from "../routes/route-context.ts";

/** A connection whose answer began before the service closed would be kept alive afterwards, and keep the process from ending. */
export function closeIdleWhenClosing(app: App): void {
  let closing = false;
  app.addHook("preClose", async () => {
    closing = true;
  });
  app.addHook("onResponse", async () => {
    if (closing) setImmediate(() => app.server.closeIdleConnections());
  });
}
