import type { Catalogue, Farm } from "../farm/index.ts";
import type { Problem } from "../problem/index.ts";
import type { OtherUnits } from "../quantity/index.ts";
import { contactIn } from "./contact.ts";
import { handlingSetting, labourSetting, walksSetting } from "./handsSetting.ts";
import { limitsSetting } from "./limitsSetting.ts";
import { marketsSetting } from "./marketsSetting.ts";
import { coverOverrides, cropOverrides } from "./overrides.ts";
import { placeSetting } from "./placeSetting.ts";
import { productsSetting } from "./productsSetting.ts";
import { sellingSetting } from "./sellingSetting.ts";
import { sensorNames, sensorsSetting } from "./sensorsSetting.ts";
import { type Setting, settingFile } from "./settingReader.ts";
import { sideBySideSetting } from "./sideBySideSetting.ts";
import { tunnelsSetting } from "./tunnelsSetting.ts";
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
  "selling",
  "tunnels",
  "side by side",
  "labour",
  "handling",
  "limits",
  "sensors",
  "keep flagged",
  "crops",
  "covers",
] as const;

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
  const where = placeSetting(group.need("place", "where the farm is"), problems);
  const usual = usualWeather(group.get("usual weather"), problems);
  const rounds = walksSetting(group.get("walks"), catalogue.settings);
  const marketSetting = group.need("markets", "at least one market");
  const marketIds = new Set<string>();
  const sold = marketsSetting(marketSetting, marketIds);
  atLeastOne(marketSetting, sold.length, "market");
  const tunnelSetting = group.need("tunnels", "at least one tunnel");
  const tunnelIds = new Set<string>();
  const stand = tunnelsSetting(tunnelSetting, tunnelIds, units ?? "US");
  atLeastOne(tunnelSetting, stand.length, "tunnel");
  const rows = sideBySideSetting(group.get("side by side"), stand, [...tunnelIds], problems);
  const crops = cropOverrides(group.get("crops"), catalogue.crops, problems);
  const covers = coverOverrides(group.get("covers"), catalogue.covers, problems);
  const offered = productsSetting(group.get("products"), crops, [...marketIds], problems);
  const selling = sellingSetting(group.get("selling"));
  const wages = labourSetting(group.get("labour"), catalogue.settings);
  const handling = handlingSetting(group.get("handling"));
  const bounds = limitsSetting(group.get("limits"), catalogue.settings);
  const probes = sensorsSetting(group.get("sensors"), [...tunnelIds], problems);
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
      sideBySide: rows,
      labour: wages,
      handling,
      limits: bounds,
      ...(Object.keys(selling).length === 0 ? {} : { settings: selling }),
      sensors: probes,
      keepFlagged,
      crops,
      covers,
    },
    problems,
  };
}
