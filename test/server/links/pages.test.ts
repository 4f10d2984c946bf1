import { describe, expect, it } from "vitest";
import { useService } from "../service.ts";

const service = useService();
const html = { accept: "text/html,application/xhtml+xml;q=0.9" };

describe("what a person with a browser meets beside the bench", () => {
  it("is a page that explains itself where a link's percent-encoding is broken", async () => {
    const reply = await service.app.inject({ url: "/b/abc%E0%A4%A", headers: html });
    expect(reply.statusCode).toBe(400);
    expect(reply.headers["content-type"]).toBe("text/html; charset=utf-8");
    expect(reply.headers["content-security-policy"]).toContain("default-src 'none'");
    expect(reply.body).toContain("This link cannot be opened");
  });

  it("is a problem where any other address is broken so", async () => {
    const reply = await service.app.inject({ url: "/api/link/%E0%A4%A" });
    expect(reply.statusCode).toBe(400);
    expect(reply.headers["content-type"]).toContain("application/problem+json");
  });

  it("is a small page at an address where nothing is, with the address escaped", async () => {
    const reply = await service.app.inject({ url: "/gone'<b>", headers: html });
    expect(reply.statusCode).toBe(404);
    expect(reply.headers["content-type"]).toBe("text/html; charset=utf-8");
    expect(reply.body).toContain("There is no such page");
    expect(reply.body).not.toContain("<b>");
    const program = await service.app.inject({ url: "/gone" });
    expect(program.statusCode).toBe(404);
    expect(program.json().type).toBe("urn:presolder:problem:not-found");
  });

  it("is the icon under the name that browsers try", async () => {
    const reply = await service.app.inject({ url: "/favicon.ico" });
    expect(reply.statusCode).toBe(200);
    expect(reply.headers["content-type"]).toContain("image/svg+xml");
    expect(reply.body).toContain("<svg");
  });
});
