import * as limits from "../../../../src/limits.ts";
import { PLAN } from "../../plan.ts";
import { multipart, withFile } from "../../service.ts";
import { pcm } from "../../wav-bytes.ts";
import type { Case } from "./limit-case.ts";

/** Of sounds that are sent. */
export const SOUND_CASES: readonly Case[] = [
  {
    limit: "seconds of sound",
    send: ({ upload }) => upload(pcm({ sampleRateHz: 8_000, bits: 8, frames: 8_000 * limits.MAX_AUDIO_SECONDS + 1 })),
    status: 413,
    path: "signal",
    names: limits.MAX_AUDIO_SECONDS,
  },
  {
    limit: "seconds of a cabinet",
    send: ({ inject }) => {
      const request = JSON.stringify({ build: PLAN, listening: { chain: "clean" } });
      const content = pcm({ sampleRateHz: 8_000, frames: 8_000 * limits.MAX_CABINET_SECONDS + 1 });
      const parts = [
        { name: "request", content: request },
        { name: "cabinet", content, filename: "cabinet.wav" },
      ];
      return inject({ method: "POST", url: "/api/preview", ...multipart(parts) });
    },
    status: 413,
    path: "cabinet",
    names: limits.MAX_CABINET_SECONDS,
  },
  {
    limit: "channels",
    send: ({ upload }) => upload(pcm({ channels: limits.MAX_AUDIO_CHANNELS + 1 })),
    status: 413,
    path: "signal",
    names: limits.MAX_AUDIO_CHANNELS,
  },
  {
    limit: "highest sample rate",
    send: ({ upload }) => upload(pcm({ sampleRateHz: limits.MAX_SAMPLE_RATE_HZ + 1 })),
    status: 413,
    path: "signal",
    names: limits.MAX_SAMPLE_RATE_HZ,
  },
  {
    limit: "lowest sample rate",
    send: ({ upload }) => upload(pcm({ sampleRateHz: limits.MIN_SAMPLE_RATE_HZ - 1 })),
    status: 413,
    path: "signal",
    names: limits.MIN_SAMPLE_RATE_HZ,
  },
  {
    limit: "plucks of one string",
    send: ({ inject }) =>
      inject({
        method: "POST",
        url: "/api/string-levels",
        ...withFile({ plucks: limits.MAX_PLUCKS + 1 }, pcm()),
      }),
    status: 400,
    path: "plucks",
    names: limits.MAX_PLUCKS,
  },
];
