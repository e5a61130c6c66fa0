import { readFileSync } from "node:fs";
import { createServer, type IncomingMessage, type Server, type ServerResponse } from "node:http";
import type { AddressInfo } from "node:net";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { gzipSync } from "node:zlib";
import type { Web } from "../../src/cli/web.ts";

const pages = join(dirname(fileURLToPath(import.meta.url)), "folders", "foretold");
const page = (name: string): string => readFileSync(join(pages, `${name}.json`), "utf8");

/** Answers one request; `tried`: how often the page was asked for before. */
type Play = (response: ServerResponse, text: string, tried: number, request: IncomingMessage) => void;

const json = { "Content-Type": "application/json; charset=utf-8" };
const send = (response: ServerResponse, text: string, more: Readonly<Record<string, string>> = {}): void => {
  response.writeHead(200, { ...json, ...more });
  response.end(text);
};
const refuse =
  (status: number, more: Readonly<Record<string, string>> = {}): Play =>
  (response) => {
    response.writeHead(status, { "Content-Type": "text/plain", ...more });
    response.end("no");
  };
/** What of a page some plays alter. */
interface Altered {
  readonly meta: { readonly units: Record<string, string> };
  readonly timeseries: {
    time: string;
    readonly data: { readonly instant: { readonly details: Record<string, unknown> } };
  }[];
}

const altered =
  (change: (page: Altered) => void): Play =>
  (response, text) => {
    const content = JSON.parse(text);
    change(content.properties);
    send(response, JSON.stringify(content));
  };

/** More than any answer may be, packed into little. */
const bomb = gzipSync(Buffer.alloc(30_000_000, " "));

/** What a service may do, by name. */
const PLAYS: Readonly<Record<string, Play>> = {
  good: (response, text) => send(response, text, { "Last-Modified": "Mon, 20 Apr 2026 08:41:17 GMT" }),
  "good for half an hour": (response, text) =>
    send(response, text, {
      "Last-Modified": "Mon, 20 Apr 2026 08:41:17 GMT",
      Expires: "Mon, 20 Apr 2026 15:30:00 GMT",
    }),
  "nothing newer": (response, text, _tried, request) => {
    if (request.headers["if-modified-since"] !== "Mon, 20 Apr 2026 08:41:17 GMT") return send(response, text);
    response.writeHead(304);
    response.end();
  },
  ending: (response, text) => {
    response.writeHead(203, json);
    response.end(text);
  },
  "busy once": (response, text, tried) =>
    tried === 0
      ? refuse(503, { "Retry-After": "2" })(response, text, tried, response.req)
      : send(response, text),
  "busy for an hour": refuse(429, { "Retry-After": "3600" }),
  "always busy": refuse(500),
  refusing: refuse(403),
  "not here": refuse(404),
  silent: () => {},
  dripping: (response) => {
    response.writeHead(200, json);
    const drop = setInterval(() => response.write(" "), 10);
    response.on("close", () => clearInterval(drop));
  },
  "cut off": (response, text) => {
    response.writeHead(200, { ...json, "Content-Length": String(text.length) });
    response.write(text.slice(0, text.length / 2), () => response.destroy());
  },
  "cut off once": (response, text, tried) => (tried === 0 ? response.destroy() : void send(response, text)),
  "a web page": (response) => {
    response.writeHead(200, { "Content-Type": "text/html" });
    response.end("<!doctype html><title>Maintenance</title>");
  },
  "a web page as JSON": (response) => send(response, "<!doctype html><title>Maintenance</title>"),
  "half a JSON": (response, text) => send(response, text.slice(0, 3000)),
  "another JSON": (response) => send(response, '{"type":"FeatureCollection","features":[]}'),
  "without temperatures": altered((properties) => {
    for (const { data } of properties.timeseries) delete data.instant.details.air_temperature;
  }),
  "absurd numbers": altered(({ timeseries }) => {
    const details = (index: number): Record<string, unknown> => timeseries[index]!.data.instant.details;
    details(3).air_temperature = 911;
    details(4).wind_speed = -4;
    details(5).cloud_area_fraction = "many";
    timeseries[6]!.time = "soon";
  }),
  "other units": altered((properties) => {
    properties.meta.units.air_temperature = "kelvin";
  }),
  "years ahead": altered((properties) => {
    properties.timeseries.at(-1)!.time = "2036-04-20T00:00:00Z";
    properties.timeseries.at(-2)!.time = "2036-04-19T18:00:00Z";
  }),
  endless: (response) => {
    response.writeHead(200, json);
    const more = (): void => {
      if (!response.destroyed) response.write(" ".repeat(100_000), more);
    };
    more();
  },
  "a packed flood": (response) => {
    response.writeHead(200, { ...json, "Content-Encoding": "gzip" });
    response.end(bomb);
  },
  "announcing a flood": (response) => {
    response.writeHead(200, { ...json, "Content-Length": "900000000" });
    response.write("{");
  },
  "sending elsewhere": refuse(302, { Location: "http://localhost:9/forecast" }),
  "sending in a circle": (response, _text, _tried, { url = "" }) =>
    refuse(301, { Location: url })(response, "", 0, response.req),
  "moved within": (response, text, _tried, { url = "" }) =>
    url.startsWith("/moved")
      ? send(response, text)
      : refuse(301, { Location: `/moved${url}` })(response, "", 0, response.req),
  "leading elsewhere": (response, text) =>
    send(response, text.replaceAll(/http:\/\/127\.0\.0\.1:\d+/gu, "https://forecasts.example")),
};

/** Both services as one local server plays them. */
export interface PlayedServices {
  readonly web: Web;
  /** What was asked for and by whom. */
  readonly asked: string[];
  /** How long was waited before another try. [ms] */
  readonly waited: number[];
  /** How they behave from now on; "not there": nobody answers. */
  play(name: string): void;
  end(): Promise<void>;
}

/** Lets a server listen on this machine alone, and gives its origin. */
async function listening(server: Server): Promise<string> {
  await new Promise<void>((begun) => server.listen(0, "127.0.0.1", begun));
  return `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
}

/** Starts a server that plays both services. */
export async function playedServices(): Promise<PlayedServices> {
  let playing = "good";
  const asked: string[] = [];
  const waited: number[] = [];
  const tried = new Map<string, number>();
  const server: Server = createServer((request, response) => {
    const url = request.url ?? "";
    const agent = request.headers["user-agent"] ?? "nobody";
    asked.push(`${url} by ${agent}`);
    const before = tried.get(url) ?? 0;
    tried.set(url, before + 1);
    const text = url.includes("/points/")
      ? page("nws-points").replaceAll("https://api.weather.gov", origin)
      : page(url.includes("/gridpoints/") ? "nws-gridpoints" : "met-complete");
    PLAYS[playing]!(response, text, before, request);
  });
  const origin = await listening(server);
  const other = createServer();
  const gone = await listening(other);
  await new Promise((closed) => other.close(closed));
  return {
    web: {
      get origin() {
        const at = playing === "not there" ? gone : origin;
        return { nws: at, "met-norway": at };
      },
      patience: 400,
      most: 5_000_000,
      wait: async (ms) => void waited.push(ms),
    },
    asked,
    waited,
    play: (name) => {
      if (name !== "not there" && !(name in PLAYS)) throw new Error(`No service behaves as "${name}".`);
      playing = name;
      tried.clear();
    },
    end: () =>
      new Promise((ended) => {
        server.close(() => ended());
        server.closeAllConnections();
      }),
  };
}
