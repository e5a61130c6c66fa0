import { access } from "node:fs/promises";
import { join } from "node:path";
import { contactFault, type FarmSettings, forecastName } from "../folder/index.ts";
import type { Problem } from "../problem/index.ts";
import { instant } from "../quantity/index.ts";
import { type Context, usage } from "./context.ts";
import { type FetchedBefore, fetchedBefore } from "./fetchedMemory.ts";
import { type Failure, type Fetched, fetchPage } from "./fetchPage.ts";
import { type Foretold, foretoldByPage } from "./foretold.ts";
import { SERVICES, type Service, type ServiceId } from "./services.ts";
import type { Given } from "./spec.ts";
import { moment } from "./understood.ts";
import { version } from "./version.ts";
import { WEB, type Web } from "./web.ts";

/** What came of asking a service for a forecast. */
export type FromService =
  | {
      readonly kind: "forecast";
      readonly read: Foretold;
      /** Remembered once the forecast is stored. */
      readonly remember: FetchedBefore;
    }
  | { readonly kind: "current"; readonly words: string }
  | { readonly kind: "none"; readonly problems: readonly Problem[] };

const option = ({ id }: Service): string => `--from-service ${id}`;

const problemOf = (service: Service, { code, expected, received, hint }: Failure): Problem => ({
  code,
  weight: "stops",
  file: option(service),
  line: null,
  column: null,
  expected,
  received,
  hint: hint ?? "Try again later, or save the service's page in a browser and import that file.",
});

/** Who asks: both services want to know it, and how to reach them. @source metTerms, nwsApi */
function contactOf(given: Given, { contact }: FarmSettings): string | Problem {
  const said = typeof given.contact === "string" ? given.contact : contact;
  const expected = "an e-mail or web address at which you can be reached, as both services require";
  const hint = 'Write it into farm.yaml, like "contact: ann@farm.example", or behind --contact.';
  if (said === null)
    return { ...usage("--contact", expected, "", hint), code: "contact-missing", received: "nothing" };
  return contactFault(said) ? usage("--contact", expected, said, hint) : said;
}

/** The address the first answer leads on to; it must be within the service. */
function ledOn(text: string, property: string, origin: string): URL | null {
  try {
    const address: unknown = JSON.parse(text)?.properties?.[property];
    const url = typeof address === "string" && URL.canParse(address) ? new URL(address) : null;
    return url?.origin === origin ? url : null;
  } catch {
    return null;
  }
}

/** Is what was fetched from an address still kept? A forecast taken back is fetched anew. */
async function keptFrom(dir: string, address: URL): Promise<FetchedBefore | null> {
  const before = (await fetchedBefore(dir)).find((each) => each.address === address.href);
  if (before === undefined) return null;
  return access(join(dir, "forecasts", before.kept)).then(
    () => before,
    () => null,
  );
}

const deprecated = (service: Service): Problem => ({
  code: "service-ending",
  weight: "needsYou",
  file: option(service),
  line: null,
  column: null,
  expected: "a page the service keeps up",
  received: "one it says will end soon",
  hint: "The forecast is good; look for a newer leafpace.",
});

/** Asks a service for the forecast at the farm; nothing else in this program uses the network. */
export async function fetchForecast(
  id: ServiceId,
  dir: string,
  given: Given,
  context: Context,
  farm: FarmSettings,
): Promise<FromService> {
  const service = SERVICES[id];
  const web: Web = context.io.web ?? WEB;
  const now = context.io.now();
  const contact = contactOf(given, farm);
  if (typeof contact !== "string") return { kind: "none", problems: [contact] };
  const none = (failed: Failure): FromService => ({ kind: "none", problems: [problemOf(service, failed)] });
  const headers = {
    Accept: "application/geo+json, application/json",
    "User-Agent": `leafpace/${version.replaceAll(" ", "-")} (${contact})`,
  };
  const ask = (url: URL, more: Readonly<Record<string, string>> = {}): Promise<Fetched> =>
    fetchPage(url, { ...headers, ...more }, web, now);

  let url = new URL(service.path(farm.place), web.origin[id]);
  if (service.leadsOnBy !== null) {
    const first = await ask(url);
    if ("failed" in first) return none(first.failed);
    const next = "page" in first ? ledOn(first.page.text, service.leadsOnBy, url.origin) : null;
    if (next === null)
      return none({
        code: "service-addresses",
        expected: `the address of the forecast as "${service.leadsOnBy}"`,
        received: "none of the service's own",
        hint: null,
      });
    url = next;
  }
  const before = await keptFrom(dir, url);
  const known = (words: string): FromService => ({
    kind: "current",
    words: `The forecast of ${service.name} fetched last ${words}; nothing to store.\n`,
  });
  if (before !== null && before.expires !== null && before.expires > now)
    return known(`holds until ${moment(farm.place.zone, instant(before.expires))}`);
  const since =
    before === null || before.lastModified === null ? {} : { "If-Modified-Since": before.lastModified };
  const came = await ask(url, since);
  if ("failed" in came) return none(came.failed);
  if ("unchanged" in came) return known("is still its newest");
  const { text, ending, lastModified, expires } = came.page;
  const read = foretoldByPage(option(service), text, null, farm);
  if (read.forecast === null) return { kind: "none", problems: read.problems };
  const problems = ending ? [...read.problems, deprecated(service)] : read.problems;
  const kept = forecastName(read.forecast.issued);
  return {
    kind: "forecast",
    read: { ...read, problems },
    remember: { address: url.href, kept, lastModified, expires },
  };
}
