import { PLAN } from "../server/plan.ts";
import { pcm } from "../server/wav-bytes.ts";

export interface Caller {
  readonly kind: string;
  /** Rest between an answer and the next request. */
  readonly restMs: number;
  ask(url: string): Promise<Response>;
}

const dial = () => Math.round(Math.random() * 100) / 10;
const position = () => 1 + Math.floor(Math.random() * 5);

function post(path: string, body: () => object): Caller["ask"] {
  const headers = { "content-type": "application/json" };
  return (url) => fetch(url + path, { method: "POST", headers, body: JSON.stringify(body()) });
}

/** Two seconds of a decaying tone, as somebody's own recording. */
function recording(): Blob {
  const file = pcm({ sampleRateHz: 44_100, frames: 88_200 });
  for (let n = 0; n < 88_200; n++)
    file.writeInt16LE(Math.round(9_000 * Math.exp(-n / 30_000) * Math.sin(n / 20)), 44 + 2 * n);
  return new Blob([new Uint8Array(file)]);
}

const RECORDING = recording();

function upload(url: string): Promise<Response> {
  const form = new FormData();
  form.set("request", JSON.stringify({ build: PLAN, settings: { lever: position(), tone: dial() } }));
  form.set("signal", RECORDING, "take.wav");
  return fetch(`${url}/api/preview`, { method: "POST", body: form });
}

/** A handful of people at once: three turn knobs, two listen, one sends recordings, one downloads whole sets, one reads. */
export function callers(code: string): readonly Caller[] {
  const curve = post("/api/response", () => ({
    build: PLAN,
    settings: { lever: position(), tone: dial(), volume: dial() },
  }));
  const sweep = post("/api/response", () => ({ build: PLAN }));
  const preview: Caller["ask"] = (url) =>
    fetch(`${url}/api/preview.wav?build=${code}&lever=${position()}&tone=${dial()}&volume=10`);
  const set = post("/api/previews", () => ({ build: PLAN, signal: "strum" }));
  return [
    ...[1, 2, 3].map(() => ({ kind: "curve", restMs: 100, ask: curve })),
    { kind: "sweep", restMs: 1_000, ask: sweep },
    ...[1, 2].map(() => ({ kind: "preview", restMs: 500, ask: preview })),
    { kind: "upload", restMs: 1_000, ask: upload },
    { kind: "set", restMs: 1_000, ask: set },
    { kind: "page", restMs: 500, ask: (url) => fetch(url) },
  ];
}
