import type { FileCalls, GetCalls, PostCalls } from "../../contract/calls.ts";
import type { Problem } from "../../contract/problem.ts";
import type { InputFault } from "../../errors.ts";
import { waitingForService } from "./reachable.ts";

/** A refusal of the service, as problem details say it. */
export class ServiceProblem extends Error {
  readonly faults: readonly InputFault[];

  constructor(message: string, faults: readonly InputFault[] = []) {
    super(message);
    this.name = "ServiceProblem";
    this.faults = faults;
  }
}

async function problemOf(response: Response): Promise<ServiceProblem> {
  try {
    const problem = (await response.json()) as Partial<Problem>;
    return new ServiceProblem(problem.detail ?? problem.title ?? response.statusText, problem.errors ?? []);
  } catch {
    return new ServiceProblem(`The service answered ${response.status} ${response.statusText}`);
  }
}

/** A service that cannot be reached is waited for, until somebody gives up. */
async function answerTo(path: string, init: RequestInit): Promise<Response> {
  for (;;) {
    try {
      return await fetch(path, init);
    } catch (error) {
      if (error instanceof DOMException && error.name === "AbortError") throw error;
      if (!(await waitingForService.pause(init.signal ?? undefined)))
        throw new ServiceProblem("The service cannot be reached; is it still running?");
    }
  }
}

/** Any call of the service. @throws ServiceProblem with what it refuses */
export async function ask(path: string, init: RequestInit): Promise<Response> {
  const response = await answerTo(path, init);
  if (!response.ok) throw await problemOf(response);
  return response;
}

const abortable = (signal: AbortSignal | undefined) => (signal ? { signal } : {});

/** A file that was bundled with this very page, whatever version the service has by now. */
export async function getBesideThePage<Data>(name: string): Promise<Data> {
  const { href } = new URL(name, import.meta.url);
  return (await ask(href, {})).json() as Promise<Data>;
}

export async function getJson<Path extends keyof GetCalls>(path: Path): Promise<GetCalls[Path]> {
  return (await ask(path, {})).json() as Promise<GetCalls[Path]>;
}

function jsonBody(body: unknown): RequestInit {
  return { method: "POST", headers: { "content-type": "application/json" }, body: JSON.stringify(body) };
}

export async function postJson<Path extends keyof PostCalls>(
  path: Path,
  body: PostCalls[Path]["request"],
  signal?: AbortSignal,
): Promise<PostCalls[Path]["answer"]> {
  return (await ask(path, { ...jsonBody(body), ...abortable(signal) })).json() as Promise<PostCalls[Path]["answer"]>;
}

/** Files of the person's own, by the field that each goes along in. */
export type OwnFiles = Readonly<Partial<Record<"signal" | "cabinet", File | undefined>>>;

/** Asks for bytes: a WAV or a ZIP. */
export async function postForBytes<Path extends keyof FileCalls>(
  path: Path,
  body: FileCalls[Path],
  files: OwnFiles = {},
  signal?: AbortSignal,
): Promise<ArrayBuffer> {
  const own = Object.entries(files).flatMap(([name, file]) => (file ? [[name, file] as const] : []));
  const init = own.length > 0 ? { method: "POST", body: formOf(body, own) } : jsonBody(body);
  return (await ask(path, { ...init, ...abortable(signal) })).arrayBuffer();
}

function formOf(request: unknown, files: readonly (readonly [name: string, file: File])[]): FormData {
  const form = new FormData();
  form.set("request", JSON.stringify(request));
  for (const [name, file] of files) form.set(name, file);
  return form;
}
