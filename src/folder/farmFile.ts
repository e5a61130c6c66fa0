import {
  type Catalogue,
  CURVES,
  type Farm,
  type Labour,
  type Limits,
  type Market,
  type Place,
  type Product,
  type Settings,
  type Tunnel,
} from "../farm/index.ts";
import type { Problem } from "../problem/index.ts";
import { instant, localHour, metrePerSecond, type OtherUnits } from "../quantity/index.ts";
import { nameAt, WEEKDAYS } from "./calendarNames.ts";
import { contactIn } from "./contact.ts";
import { unknownCrop } from "./cropNames.ts";
import { unknownName } from "./faults.ts";
import { coverOverrides, cropOverrides } from "./overrides.ts";
import { type Setting, type SettingGroup, settingFile } from "./settingReader.ts";
import { fitsSun, offsetWords, standardOffset } from "./standardTime.ts";
import { usualWeather } from "./usualWeather.ts";

/** What farm.yaml holds; the tables of the folder add the rest. */
export type FarmSettings = Omit<Farm, "pieces" | "successions" | "notes" | "normals"> & {
  /** E-mail or web address at which the grower can be reached by a weather service; null: none is given. */
  readonly contact: string | null;
};

const KNOWN = [
  "name",
  "units",
  "currency",
  "contact",
  "place",
  "usual weather",
  "walks",
  "markets",
  "products",
  "tunnels",
  "labour",
  "limits",
  "sensors",
  "keep flagged",
  "crops",
  "covers",
] as const;

/** Where a sensor is that stands in the open. */
export const OUTSIDE = "outside";

/** A sensor's name becomes the name of a file. */
export const isSensorName = (name: string): boolean => /^[\w-]+$/u.test(name);

const knownZone = (zone: string): boolean => !Number.isNaN(localHour(zone, instant(0)));

/** Any year: standard time is compared with the sun only roughly. */
const YEAR = 2026;

function farFromSun(setting: Setting, longitude: number, zone: string): readonly Problem[] {
  if (fitsSun(zone, longitude, YEAR)) return [];
  const sun = offsetWords(Math.round(longitude / 15) * 60);
  return [
    {
      ...setting.spot,
      code: "zone-far-from-longitude",
      weight: "needsYou",
      expected: `a time zone near longitude ${longitude}, about ${sun}`,
      received: `${zone}, ${offsetWords(standardOffset(zone, YEAR))}`,
      hint: "Check latitude, longitude and zone; are two swapped?",
    },
  ];
}

function place(setting: Setting | null, problems: Problem[]): Place | null {
  const group = setting?.settings(["latitude", "longitude", "elevation", "zone", "setting", "curve"]) ?? null;
  if (group === null) return null;
  const latitude =
    group.need("latitude", "a latitude like 44.12")?.number("degrees, north positive,", -90, 90) ?? null;
  const longitude =
    group.need("longitude", "a longitude like -72.84")?.number("degrees, east positive,", -180, 180) ?? null;
  const elevation = group.need("elevation", "a height above the sea like 620 ft")?.quantity("length") ?? null;
  const zoneSetting = group.need("zone", "a time zone like America/New_York");
  let zone = zoneSetting?.text("a time zone like America/New_York") ?? null;
  if (zone !== null && !knownZone(zone)) {
    const zones = Intl.supportedValuesOf("timeZone");
    const problem = unknownName(
      zoneSetting!.spot,
      zone,
      "a time zone like America/New_York",
      zones,
      "zone-unknown",
    );
    zone = zoneSetting!.fault(
      problem.code,
      problem.expected,
      problem.hint.startsWith("Did")
        ? problem.hint
        : "Write continent and city, with a slash and underscores.",
    );
  }
  if (zone !== null && longitude !== null) problems.push(...farFromSun(zoneSetting!, longitude, zone));
  const lie =
    group.get("setting") === null ? "inland" : group.get("setting")!.oneOf(["inland", "coast"] as const);
  const curve = group.get("curve") === null ? CURVES[0] : group.get("curve")!.oneOf(CURVES);
  if (latitude === null || longitude === null || elevation === null || zone === null) return null;
  if (lie === null || curve === null) return null;
  return { latitude, longitude, elevation, zone, setting: lie, curve };
}

function walks(setting: Setting | null, settings: Settings): Farm["walks"] | null {
  const group = setting?.settings(["morning", "evening"]) ?? null;
  if (group === null) return { morning: settings.morningWalk, evening: settings.eveningWalk };
  const morning = group.get("morning") === null ? settings.morningWalk : group.get("morning")!.clock();
  const evening = group.get("evening") === null ? settings.eveningWalk : group.get("evening")!.clock();
  if (morning === null || evening === null) return null;
  if (morning < evening) return { morning, evening };
  return setting!.fault(
    "walks-out-of-order",
    "a morning walk before the evening walk",
    "Swap the two times.",
  );
}

/** Names an entry of a list and sees that no two are called the same. */
function identity(group: SettingGroup, what: string, taken: Set<string>): string | null {
  const setting = group.need("id", `a short name for the ${what}`);
  const id = setting?.text(`a short name for the ${what}`) ?? null;
  if (id === null) return null;
  if (/\s/u.test(id))
    return setting!.fault(
      "id-with-blank",
      "a short name without blanks",
      "Use - instead; the name may be long.",
    );
  if (taken.has(id))
    return setting!.fault("id-twice", `a name no other ${what} has`, "Call one of the two differently.");
  taken.add(id);
  return id;
}

function picks(setting: Setting | null): Market["picks"] | null {
  const found: { daysBefore: number; hour: number }[] = [];
  if (setting === null) return null;
  const entries = setting.list();
  for (const entry of entries) {
    const group = entry.settings(["days before", "time"]);
    const before = group?.get("days before") ?? null;
    const daysBefore = before === null ? 0 : before.number("days", 0, 6, "whole");
    const hour = group?.need("time", "the time cutting begins, like 6:00")?.clock() ?? null;
    if (daysBefore !== null && hour !== null) found.push({ daysBefore, hour });
  }
  if (found.length === 0 && entries.length === 0)
    return setting.fault(
      "picks-missing",
      "at least one moment greens are cut",
      'Write picks: [ { days before: 0, time: "6:00" } ].',
    );
  return found.length === entries.length ? found : null;
}

/** @param taken - Receives every id, also of an entry that is not sound otherwise: names are known all the same. */
function markets(setting: Setting | null, taken: Set<string>): readonly Market[] {
  return (setting?.list() ?? []).flatMap((entry) => {
    const group = entry.settings(["id", "name", "day", "picks"]);
    if (group === null) return [];
    const id = identity(group, "market", taken);
    const name = group.get("name")?.text("the market's name") ?? id;
    const daySetting = group.need("day", "a day of the week");
    const short = daySetting?.text("a day of the week") ?? "";
    const named = WEEKDAYS[nameAt(short, WEEKDAYS)];
    const day = named ?? (short === "" ? null : (daySetting?.oneOf(WEEKDAYS) ?? null));
    const moments = picks(group.need("picks", "the moments greens are cut for it"));
    if (id === null || name === null || day === null || moments === null) return [];
    return [{ id, name, weekday: WEEKDAYS.indexOf(day), picks: moments }];
  });
}

function parts(setting: Setting | null, crops: Farm["crops"], problems: Problem[]): Product["parts"] | null {
  const group = setting?.settings(null) ?? null;
  if (group === null) return null;
  const found: { crop: string; share: number }[] = [];
  for (const crop of group.names) {
    const part = group.get(crop)!;
    if (!crops.has(crop)) problems.push(unknownCrop(part.spot, crop, [...crops.keys()]));
    const share = part.quantity("share");
    if (share !== null && crops.has(crop)) found.push({ crop, share });
  }
  if (found.length < group.names.length) return null;
  const sum = found.reduce((total, { share }) => total + share, 0);
  if (Math.abs(sum - 1) <= 0.011)
    return found.map(({ crop, share }) => ({ crop, share: share / sum, swaps: [] }));
  problems.push({
    ...setting!.spot,
    code: "shares-not-whole",
    weight: "stops",
    expected: "shares that come to 100 % together",
    received: `${Math.round(sum * 1000) / 10} %`,
    hint: "Raise or lower a share.",
  });
  return null;
}

function orders(setting: Setting, ids: readonly string[], problems: Problem[]): Product["orders"] {
  return setting.list().flatMap((entry) => {
    const group = entry.settings(["market", "weight"]);
    const marketSetting = group?.need("market", "a market") ?? null;
    const market = marketSetting?.text("a market") ?? null;
    const weight = group?.need("weight", "a weight like 30 lb")?.quantity("mass") ?? null;
    if (market !== null && !ids.includes(market))
      problems.push(unknownName(marketSetting!.spot, market, "a market", ids, "market-unknown"));
    return market === null || weight === null ? [] : [{ market, weight, short: null }];
  });
}

function products(
  setting: Setting | null,
  crops: Farm["crops"],
  marketIds: readonly string[],
  problems: Problem[],
): readonly Product[] {
  const taken = new Set<string>();
  return (setting?.list() ?? []).flatMap((entry) => {
    const group = entry.settings(["id", "name", "parts", "price", "orders"]);
    if (group === null) return [];
    const id = identity(group, "product", taken);
    const name = group.get("name")?.text("the product's name") ?? id;
    const shares = parts(group.need("parts", "the crops in it with their shares"), crops, problems);
    const priceSetting = group.get("price");
    const price = priceSetting === null ? null : priceSetting.quantity("price");
    const orderSetting = group.get("orders");
    const ordered = orderSetting === null ? [] : orders(orderSetting, marketIds, problems);
    return id === null || name === null || shares === null
      ? []
      : [{ id, name, parts: shares, price, stall: null, orders: ordered }];
  });
}

/** @param taken - Receives every id, as of markets. */
function tunnels(setting: Setting | null, taken: Set<string>): readonly Tunnel[] {
  return (setting?.list() ?? []).flatMap((entry) => {
    const group = entry.settings(["id", "name", "length", "hoops", "beds"]);
    if (group === null) return [];
    const id = identity(group, "tunnel", taken);
    const name = group.get("name")?.text("the tunnel's name") ?? id;
    const lengthSetting = group.need("length", "a length like 50 ft");
    const measured = lengthSetting?.quantity("length") ?? null;
    const length =
      measured !== null && measured <= 0
        ? lengthSetting!.fault(
            "length-not-positive",
            "a length above zero",
            "Measure the tunnel along its beds.",
          )
        : measured;
    const hoops = group
      .need("hoops", "wire, conduit, pvc or none")
      ?.oneOf(["wire", "conduit", "pvc", "none"] as const);
    const bedSetting = group.get("beds");
    const beds = bedSetting === null ? 1 : bedSetting.number("a number of beds", 1, 20, "whole");
    if (
      id === null ||
      name === null ||
      length === null ||
      hoops === null ||
      hoops === undefined ||
      beds === null
    )
      return [];
    return [{ id, name, length, hoops: hoops === "none" ? null : hoops, beds }];
  });
}

function labour(setting: Setting | null, settings: Settings): Labour {
  const group = setting?.settings(["wage", "pace"]) ?? null;
  return {
    wage: group?.get("wage")?.number("an hour's wage in the farm's currency", 0, 10_000) ?? settings.wage,
    pace: group?.get("pace")?.number("a factor on the minutes", 0.1, 10) ?? 1,
    cutting: settings.cutting,
    walk: null,
    picking: null,
  };
}

function limits(setting: Setting | null, settings: Settings): Limits {
  const group = setting?.settings(["changes per week", "wind", "dim days", "caution"]) ?? null;
  return {
    changesPerWeek:
      group?.get("changes per week")?.number("a number of changes", 0, 14, "whole") ??
      settings.changesPerWeek,
    layers: settings.layers,
    wind: group?.get("wind")?.quantity("speed") ?? metrePerSecond(settings.windLimit),
    dimDays: group?.get("dim days")?.number("a number of days", 0, 60) ?? settings.dimDays,
    caution: group?.get("caution")?.number("a factor", 1, 100) ?? settings.caution,
  };
}

function sensors(
  setting: Setting | null,
  tunnelIds: readonly string[],
  problems: Problem[],
): ReadonlyMap<string, string> {
  // A farm with one logger in the open need not say so.
  if (setting === null) return new Map([[OUTSIDE, OUTSIDE]]);
  const found = new Map<string, string>();
  const group = setting.settings(null);
  const places = [OUTSIDE, ...tunnelIds];
  for (const name of group?.names ?? []) {
    const sensor = group!.get(name)!;
    const where = sensor.text("outside or a tunnel");
    if (!isSensorName(name))
      sensor.fault(
        "sensor-name",
        "a sensor's name of letters, digits, - and _",
        "It becomes the name of a file.",
      );
    else if (where !== null && !places.includes(where))
      problems.push(unknownName(sensor.spot, where, "outside or a tunnel", places, "tunnel-unknown"));
    else if (where !== null) found.set(name, where);
  }
  return found;
}

/** Sensors named in a list; one that "sensors" does not place may be placed by an import. */
const sensorNames = (setting: Setting | null): ReadonlySet<string> =>
  new Set((setting?.list() ?? []).map((entry) => entry.text("a sensor")).filter((name) => name !== null));

function atLeastOne(setting: Setting | null, found: number, what: string): void {
  if (setting !== null && found === 0 && setting.list().length === 0)
    setting.fault("list-empty", `at least one ${what}`, `Add a ${what}.`);
}

const emptyFile = (file: string): Problem => ({
  code: "farm-empty",
  weight: "stops",
  file,
  line: null,
  column: null,
  expected: "the farm's settings",
  received: "an empty file",
  hint: 'Delete it; then "leafpace start" writes one to fill in.',
});

/**
 * Reads farm.yaml. All problems at once, each with its line and the path of its setting.
 *
 * @param catalogue - Crops and covers to build on, and the settings that count where the farm says nothing.
 */
export function farmFile(
  file: string,
  text: string,
  catalogue: Catalogue,
  other?: OtherUnits,
): { readonly farm: FarmSettings | null; readonly problems: readonly Problem[] } {
  if (text.trim() === "") return { farm: null, problems: [emptyFile(file)] };
  const { root, problems } = settingFile(file, text, other);
  if (problems.length > 0) return { farm: null, problems };
  const group = root.settings(KNOWN);
  if (group === null) return { farm: null, problems };
  const name = group.need("name", "the farm's name")?.text("the farm's name") ?? null;
  const units = group.need("units", "US or metric")?.oneOf(["US", "metric"] as const) ?? null;
  const currency = group.get("currency")?.text("a sign like $") ?? null;
  const contact = contactIn(group.get("contact"));
  const where = place(group.need("place", "where the farm is"), problems);
  const usual = usualWeather(group.get("usual weather"), problems);
  const rounds = walks(group.get("walks"), catalogue.settings);
  const marketSetting = group.need("markets", "at least one market");
  const marketIds = new Set<string>();
  const sold = markets(marketSetting, marketIds);
  atLeastOne(marketSetting, sold.length, "market");
  const tunnelSetting = group.need("tunnels", "at least one tunnel");
  const tunnelIds = new Set<string>();
  const stand = tunnels(tunnelSetting, tunnelIds);
  atLeastOne(tunnelSetting, stand.length, "tunnel");
  const crops = cropOverrides(group.get("crops"), catalogue.crops, problems);
  const covers = coverOverrides(group.get("covers"), catalogue.covers, problems);
  const offered = products(group.get("products"), crops, [...marketIds], problems);
  const wages = labour(group.get("labour"), catalogue.settings);
  const bounds = limits(group.get("limits"), catalogue.settings);
  const probes = sensors(group.get("sensors"), [...tunnelIds], problems);
  const keepFlagged = sensorNames(group.get("keep flagged"));
  problems.sort((a, b) => (a.line ?? 0) - (b.line ?? 0));
  if (problems.some(({ weight }) => weight === "stops")) return { farm: null, problems };
  if (name === null || units === null || where === null || rounds === null) return { farm: null, problems };
  return {
    farm: {
      name,
      units,
      currency,
      contact,
      place: where,
      usual,
      walks: rounds,
      markets: sold,
      products: offered,
      tunnels: stand,
      sideBySide: [],
      labour: wages,
      handling: { washing: null, cooler: null },
      limits: bounds,
      sensors: probes,
      keepFlagged,
      crops,
      covers,
    },
    problems,
  };
}
