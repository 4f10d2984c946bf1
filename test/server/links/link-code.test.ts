import { createHash } from "node:crypto";
import { readdirSync, readFileSync } from "node:fs";
import { deflateRawSync } from "node:zlib";
import { describe, expect, it } from "vitest";
import { expandBuild } from "../../../src/build-file/expand.ts";
import { decodeLink, encodeLink } from "../../../src/server/links/link-code.ts";
import { LINK_DICTIONARY } from "../../../src/server/links/link-dictionary.ts";

const SCENARIOS = new URL("../../../scenarios/", import.meta.url);

function linkContents(): [string, { build: unknown; view: unknown }][] {
  return readdirSync(SCENARIOS).map((file) => {
    const scenario = JSON.parse(readFileSync(new URL(file, SCENARIOS), "utf8"));
    const other = scenario.compareWith === undefined ? {} : { other: expandBuild(scenario.compareWith) };
    const settings = { lever: 2, volume: 10, tone1: 7, tone2: 10 };
    return [
      file,
      { build: expandBuild(scenario.build), view: { settings, family: "tone", signal: "strum", ...other } },
    ];
  });
}

describe("link codes", () => {
  it.each(linkContents())("carry %s, both builds and the view, in at most 1,200 characters", (_file, content) => {
    const code = encodeLink(content);
    expect(code.length).toBeLessThanOrEqual(1200);
    expect(decodeLink(code)).toEqual(content);
  });

  it("of the first version, packed with neither dictionary nor checksum, keep opening", () => {
    const content = { build: { presolder: 1 } };
    const code = `1${deflateRawSync(JSON.stringify(content), { level: 9 }).toString("base64url")}`;
    expect(decodeLink(code)).toEqual(content);
  });

  it("are refused with any one letter changed", () => {
    const code = encodeLink(linkContents()[0]![1]);
    for (let at = 1; at < code.length - 1; at++) {
      const changed = `${code.slice(0, at)}${code[at] === "A" ? "B" : "A"}${code.slice(at + 1)}`;
      expect(() => decodeLink(changed), `letter ${at}`).toThrow(/damaged/);
    }
  });

  it("rest on a dictionary that never changes", () => {
    // A changed text would leave every link sent before unreadable: give the new one a version of its own.
    expect(createHash("sha256").update(LINK_DICTIONARY).digest("hex")).toBe(
      "d38a4aab06d22a4f51b539c7d87d2941b81dd3ec2cb22d4fbd35a93f14f353f6",
    );
  });

  it.each(["3AAAA", "AAAA", ""])("of unknown version are refused: %j", (code) => {
    expect(() => decodeLink(code)).toThrow(/version|characters/);
  });
});
