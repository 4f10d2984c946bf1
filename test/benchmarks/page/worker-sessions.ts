import type { CDPSession, Page } from "playwright-core";

type Answer = { readonly id: number; readonly result?: unknown; readonly error?: { readonly message: string } };

/**
 * The page's dedicated workers over the browser's protocol. A session speaks to its page alone, so what is meant for a worker
 * is wrapped in messages to the page.
 */
export class WorkerSessions {
  readonly #session: CDPSession;
  readonly #workers = new Set<string>();
  readonly #waiting = new Map<number, (answer: Answer) => void>();
  #lastId = 0;

  /** @param prelude a script that every worker runs before its own */
  static async follow(page: Page, prelude = ""): Promise<WorkerSessions> {
    const session = await page.context().newCDPSession(page);
    const workers = new WorkerSessions(session, prelude);
    await session.send("Target.setAutoAttach", { autoAttach: true, waitForDebuggerOnStart: true, flatten: false });
    return workers;
  }

  private constructor(session: CDPSession, prelude: string) {
    this.#session = session;
    session.on("Target.attachedToTarget", ({ sessionId, targetInfo }) => {
      const isWorker = targetInfo.type === "worker";
      if (isWorker) this.#workers.add(sessionId);
      if (isWorker && prelude) void this.#ask(sessionId, "Runtime.evaluate", { expression: prelude });
      void this.#ask(sessionId, "Runtime.runIfWaitingForDebugger");
    });
    session.on("Target.detachedFromTarget", ({ sessionId }) => this.#workers.delete(sessionId));
    session.on("Target.receivedMessageFromTarget", ({ message }) => {
      const answer = JSON.parse(message) as Answer;
      this.#waiting.get(answer.id)?.(answer);
      this.#waiting.delete(answer.id);
    });
  }

  /** The same question to every worker there is now. */
  askAll<Result>(method: string): Promise<Result[]> {
    return Promise.all([...this.#workers].map((worker) => this.#ask(worker, method) as Promise<Result>));
  }

  async #ask(worker: string, method: string, params: object = {}): Promise<unknown> {
    this.#lastId += 1;
    const id = this.#lastId;
    const answered = new Promise<Answer>((resolve) => this.#waiting.set(id, resolve));
    const message = JSON.stringify({ id, method, params });
    await this.#session.send("Target.sendMessageToTarget", { sessionId: worker, message });
    const { result, error } = await answered;
    if (error) throw new Error(`${method}: ${error.message}`);
    return result;
  }
}
