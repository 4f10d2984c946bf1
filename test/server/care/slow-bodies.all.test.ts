import { connect, type Socket } from "node:net";
import { describe, expect, test } from "vitest";
import { ByteBudget } from "../../../src/server/care/byte-budget.ts";
import { TooManyRequests } from "../../../src/server/care/refusals.ts";
import { ServiceBusy } from "../../../src/server/work/job-failures.ts";
import { threeSingles } from "../../fixtures/circuits.ts";
import { listening, serviceWith } from "../loopback.ts";

const BODY = JSON.stringify({ build: threeSingles(), frequencies: [1000] });
const HEAD = `POST /api/response HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\nContent-Type: application/json\r\nContent-Length: ${BODY.length}\r\n\r\n`;
const bodies = { bytesPerSecond: 100, windowMs: 100 };

async function textOf(socket: Socket): Promise<string> {
  let text = "";
  for await (const chunk of socket) text += chunk;
  return text;
}

describe("a body", () => {
  test("that drips ends with 408 and problem details, long before the request's own time is over", async () => {
    const socket = connect({ host: "127.0.0.1", port: await listening(await serviceWith({ protection: { bodies } })) });
    socket.write(`${HEAD}{`);
    const drip = setInterval(() => socket.write(" "), 50);
    const text = await textOf(socket).finally(() => clearInterval(drip));
    expect(text).toMatch(/^HTTP\/1\.1 408 .*application\/problem\+json.*"status":408/s);
  });

  test("that comes slowly but steadily is served", async () => {
    const socket = connect({ host: "127.0.0.1", port: await listening(await serviceWith({ protection: { bodies } })) });
    socket.write(HEAD);
    const text = textOf(socket);
    let at = 0;
    const send = setInterval(() => {
      socket.write(BODY.slice(at, at + 60));
      at += 60;
      if (at >= BODY.length) clearInterval(send);
    }, 30);
    expect(await text).toMatch(/^HTTP\/1\.1 200 /);
  });

  test("that is whole may be worked on for any time", async () => {
    const app = await serviceWith({ protection: { bodies } });
    app.post("/late", async () => {
      await new Promise((resolve) => setTimeout(resolve, 6 * bodies.windowMs));
      return "";
    });
    const port = await listening(app);
    const answer = await fetch(`http://127.0.0.1:${port}/late`, {
      method: "POST",
      body: "x",
      headers: { "content-type": "text/plain" },
    });
    expect(answer.status).toBe(200);
  });
});

describe("memory for uploads", () => {
  test("leaves room for others whatever one client holds", () => {
    const budget = new ByteBudget(300, 100);
    budget.take("a", 60);
    expect(() => budget.take("a", 41)).toThrow(TooManyRequests);
    budget.take("b", 100);
    budget.take("c", 100);
    expect(() => budget.take("d", 41)).toThrow(ServiceBusy);
    budget.take("d", 41, true);
    budget.give("d", 41);
    budget.give("a", 60);
    budget.take("a", 100);
  });
});
