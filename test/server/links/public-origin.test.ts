import { connect } from "node:net";
import { describe, expect, test } from "vitest";
import { threeSingles } from "../../fixtures/circuits.ts";
import { listening, serviceWith } from "../loopback.ts";

const BODY = JSON.stringify({ build: threeSingles() });

async function linkFrom(port: number, headers: Readonly<Record<string, string>>): Promise<string> {
  const lines = Object.entries({ ...headers, "content-type": "application/json", "content-length": `${BODY.length}` });
  const socket = connect({ host: "127.0.0.1", port });
  const head = lines.map(([name, value]) => `${name}: ${value}\r\n`).join("");
  socket.write(`POST /api/link HTTP/1.1\r\nconnection: close\r\n${head}\r\n${BODY}`);
  let text = "";
  for await (const chunk of socket) text += chunk;
  return new URL(JSON.parse(text.slice(text.indexOf("\r\n\r\n") + 4)).url).origin;
}

describe("a link of the service", () => {
  test("leads to where the caller reached it, and never where a Host header alone says", async () => {
    const port = await listening(await serviceWith());
    expect(await linkFrom(port, { host: `localhost:${port}` })).toBe(`http://localhost:${port}`);
    expect(await linkFrom(port, { host: "localhost:8080" })).toBe("http://localhost:8080");
    for (const host of [
      "elsewhere.example",
      "localhost.elsewhere.example",
      "127.0.0.1.elsewhere.example:80",
      "10.1.2.3",
    ]) {
      expect(await linkFrom(port, { host })).toBe(`http://127.0.0.1:${port}`);
    }
  });

  test("leads to where a trusted proxy was reached, and to no other proxy's word", async () => {
    const forwarded = {
      host: "inside",
      "x-forwarded-for": "192.0.2.1",
      "x-forwarded-host": "guards.example",
      "x-forwarded-proto": "https",
    };
    const trusting = await listening(await serviceWith({ trustProxy: 1 }));
    expect(await linkFrom(trusting, forwarded)).toBe("https://guards.example");
    const port = await listening(await serviceWith());
    expect(await linkFrom(port, forwarded)).toBe(`http://127.0.0.1:${port}`);
  });

  test("leads to the public address where that is set", async () => {
    const port = await listening(await serviceWith({ publicUrl: "https://guards.example" }));
    expect(await linkFrom(port, { host: "elsewhere.example" })).toBe("https://guards.example");
  });
});
