import { connect } from "node:net";
import { describe, expect, test } from "vitest";
import * as limits from "../../../src/limits.ts";
import { listening, serviceWith } from "../loopback.ts";
import { useService } from "../service.ts";

const service = useService();

describe("limits on time", () => {
  test("are set on the server for headers, requests and silence", () => {
    expect(service.app.server.headersTimeout).toBe(limits.HEADERS_TIMEOUT_MS);
    expect(service.app.server.requestTimeout).toBe(limits.REQUEST_TIMEOUT_MS);
    expect(service.app.server.timeout).toBe(limits.CONNECTION_TIMEOUT_MS);
  });

  test("end a connection whose headers do not come, with problem details", async () => {
    const slow = await serviceWith();
    slow.server.headersTimeout = 100;
    const socket = connect({ host: "127.0.0.1", port: await listening(slow) });
    socket.write("GET /healthz HTTP/1.1\r\nHost: x\r\nX-Slow: ");
    let text = "";
    for await (const chunk of socket) text += chunk;
    expect(text).toMatch(/^HTTP\/1\.1 408 .*application\/problem\+json.*"status":408/s);
  });

  test("do not keep headers of any length", async () => {
    const port = await listening(await serviceWith());
    const socket = connect({ host: "127.0.0.1", port });
    socket.write(`GET /healthz HTTP/1.1\r\nHost: x\r\nX-Long: ${"a".repeat(20_000)}\r\n\r\n`);
    let text = "";
    for await (const chunk of socket) text += chunk;
    expect(text).toMatch(/^HTTP\/1\.1 431 .*application\/problem\+json/s);
  });
});
