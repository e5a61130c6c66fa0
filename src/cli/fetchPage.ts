import type { Web } from "./web.ts";

/** A page as a service gave it. */
export interface Page {
  readonly text: string;
  readonly lastModified: string | null;
  /** Until when it need not be asked for again. [ms since 1970] */
  readonly expires: number | null;
  /** The service says that this kind of page will end. */
  readonly ending: boolean;
}

/** What came of asking, in the words of a problem. */
export type Fetched = { readonly page: Page } | { readonly unchanged: true } | { readonly failed: Failure };

export interface Failure {
  readonly code: string;
  readonly expected: string;
  readonly received: string;
  /** null: the usual one, to try later. */
  readonly hint: string | null;
}

/** A failure that may pass, and how long the service asks to wait. [ms] */
interface Passing {
  readonly passing: Failure;
  readonly after: number | null;
}

/** Tries in all, how long is waited before the second and before the third, and how long at most when a service asks for it. [ms] judgement */
const TRIES = 3;
const PAUSES = [1000, 4000] as const;
const LONGEST_PAUSE = 30_000;

/** Redirections followed within a service. */
const REDIRECTIONS = 3;

const failure = (code: string, expected: string, received: string, hint: string | null = null): Failure => ({
  code: `service-${code}`,
  expected,
  received,
  hint,
});

const minutes = (ms: number): string => {
  const count = Math.max(1, Math.ceil(ms / 60_000));
  return `${count} ${count === 1 ? "minute" : "minutes"}`;
};

/** Codes of the system for a name that nobody knows or a net that cannot be reached. */
const OFFLINE = new Set([
  "ENOTFOUND",
  "EAI_AGAIN",
  "ENETUNREACH",
  "EHOSTUNREACH",
  "ENETDOWN",
  "ECONNREFUSED",
]);

/** The system's code in an error or in what caused it. */
function codeOf(error: unknown): string {
  for (let each = error; each instanceof Error; each = each.cause) {
    const { code, errors } = each as NodeJS.ErrnoException & { readonly errors?: readonly unknown[] };
    if (code !== undefined) return code;
    if (errors !== undefined && errors.length > 0) return codeOf(errors[0]);
  }
  return "";
}

function failureOf(error: unknown, patience: number): Failure | Passing {
  const code = codeOf(error);
  if (error instanceof Error && error.name === "TimeoutError")
    return {
      passing: failure("slow", `a whole answer within ${patience / 1000} seconds`, "none"),
      after: null,
    };
  if (OFFLINE.has(code))
    return failure(
      "offline",
      "a way to the service",
      "none",
      "Is this machine online? A forecast can also be typed, one line a day.",
    );
  return { passing: failure("cut-off", "a whole answer", "one that was cut off"), after: null };
}

/** How long the header Retry-After asks to wait. [ms] */
function retryAfter(response: Response, now: number): number | null {
  const text = response.headers.get("retry-after");
  if (text === null) return null;
  const ms = /^\d{1,6}$/u.test(text) ? Number(text) * 1000 : Date.parse(text) - now;
  return Number.isNaN(ms) ? null : Math.max(0, ms);
}

/** What a status other than a page's means. */
function refusalOf(response: Response, now: number): Failure | Passing {
  const { status } = response;
  const received = `status ${status}`;
  const after = retryAfter(response, now);
  const busy = failure("busy", "a forecast", `${received}: the service is busy`);
  if (status === 429 || status >= 500) return { passing: busy, after };
  if (status === 403)
    return failure(
      "refused",
      "a forecast",
      `${received}: the service refuses`,
      'See that "contact" in farm.yaml is an address at which you can be reached.',
    );
  if (status === 404)
    return failure(
      "not-here",
      "a forecast for the farm's place",
      `${received}: the service has none`,
      'Check latitude and longitude in farm.yaml; "nws" serves the United States, "met-norway" the whole world.',
    );
  return failure("answer", "a forecast", received);
}

async function bodyOf(response: Response, most: number): Promise<string | Failure> {
  const tooLong = failure("too-long", `an answer of at most ${most / 1_000_000} MB`, "a longer one");
  if (Number(response.headers.get("content-length") ?? 0) > most) return tooLong;
  const pieces: Uint8Array[] = [];
  let length = 0;
  for await (const piece of (response.body ?? []) as AsyncIterable<Uint8Array>) {
    length += piece.length;
    if (length > most) return tooLong;
    pieces.push(piece);
  }
  return new TextDecoder().decode(Buffer.concat(pieces));
}

/** Until when an answer holds, from Cache-Control or Expires. */
function expiresAt(response: Response, now: number): number | null {
  const age = /\bmax-age=(\d{1,8})\b/u.exec(response.headers.get("cache-control") ?? "")?.[1];
  if (age !== undefined) return now + Number(age) * 1000;
  const at = Date.parse(response.headers.get("expires") ?? "");
  return Number.isNaN(at) ? null : at;
}

/** Where an answer sends on to: only within the service, as it was reached. */
function redirection(from: URL, response: Response): URL | Failure {
  const to = response.headers.get("location") ?? "";
  const within = URL.canParse(to, from.href) ? new URL(to, from) : null;
  if (within?.origin === from.origin) return within;
  return failure("redirect", "an answer of the service itself", "one that sends elsewhere");
}

async function tryOnce(
  first: URL,
  headers: Readonly<Record<string, string>>,
  { patience, most }: Web,
  now: number,
): Promise<Fetched | Passing> {
  const stop = new AbortController();
  const signal = AbortSignal.any([AbortSignal.timeout(patience), stop.signal]);
  const told = (failed: Failure | Passing): Fetched | Passing => ("passing" in failed ? failed : { failed });
  try {
    let url = first;
    for (let hop = 0; ; hop++) {
      const response = await fetch(url.href, { headers, redirect: "manual", signal });
      const { status } = response;
      if (status === 304) return { unchanged: true };
      if ([301, 302, 303, 307, 308].includes(status)) {
        const next = redirection(url, response);
        if (!(next instanceof URL)) return { failed: next };
        if (hop >= REDIRECTIONS)
          return { failed: failure("redirect", "a forecast", "one redirection after another") };
        url = next;
        continue;
      }
      if (status !== 200 && status !== 203) return told(refusalOf(response, now));
      const type = response.headers.get("content-type") ?? "nothing";
      if (!/^application\/(?:[\w.-]+\+)?json\b/u.test(type))
        return { failed: failure("type", "JSON", type.slice(0, 60).replace(/[^\x20-\x7e]/gu, "?")) };
      const text = await bodyOf(response, most);
      if (typeof text !== "string") return { failed: text };
      return {
        page: {
          text,
          lastModified: response.headers.get("last-modified"),
          expires: expiresAt(response, now),
          ending: status === 203,
        },
      };
    }
  } catch (error) {
    return told(failureOf(error, patience));
  } finally {
    stop.abort();
  }
}

/**
 * Asks a service for a page, again when it is busy or the answer is cut off: at most three times, and as late as it asks.
 *
 * @param headers - With the User-Agent that tells who asks.
 * @param now - [ms since 1970]
 */
export async function fetchPage(
  url: URL,
  headers: Readonly<Record<string, string>>,
  web: Web,
  now: number,
): Promise<Fetched> {
  for (let tried = 1; ; tried++) {
    const came = await tryOnce(url, headers, web, now);
    if (!("passing" in came)) return came;
    const { passing, after } = came;
    if (after !== null && after > LONGEST_PAUSE)
      return { failed: { ...passing, hint: `It asks to wait ${minutes(after)}; try again after that.` } };
    if (tried === TRIES) return { failed: passing };
    await web.wait(after ?? PAUSES[tried - 1]!);
  }
}
