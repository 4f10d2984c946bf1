import { expect, it } from "vitest";
import { louderChannel } from "../../src/audio/louder-channel.ts";

it("picks the channel with more in it, and of two alike the first", () => {
  const [hum, taps] = [Float32Array.of(0.1, -0.1, 0.1), Float32Array.of(0, 0, -0.5)];
  expect(louderChannel([hum, taps])).toBe(taps);
  expect(louderChannel([taps, hum])).toBe(taps);
  expect(louderChannel([hum, hum.slice()])).toBe(hum);
  expect(louderChannel([hum])).toBe(hum);
});
