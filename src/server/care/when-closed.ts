type RawReply = NodeJS.EventEmitter & { readonly writableFinished: boolean };

const waiting = new WeakMap<RawReply, (() => void)[]>();

/** Calls back when an answer is out or its caller has left. One listener serves all who wait for the same answer. */
export function whenClosed({ raw }: { readonly raw: RawReply }, callback: () => void): void {
  const known = waiting.get(raw);
  if (known) {
    known.push(callback);
    return;
  }
  const callbacks = [callback];
  waiting.set(raw, callbacks);
  raw.once("close", () => {
    for (const each of callbacks) each();
  });
}
