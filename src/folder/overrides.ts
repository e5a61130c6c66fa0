import { COUNTINGS, type Cover, type Crop, CUT_OFFS, RESPONSES } from "../farm/index.ts";
import { celsius, type QuantityKind, toFahrenheit } from "../quantity/index.ts";
import { countedOverride } from "./countedOverride.ts";
import { unknownCover } from "./coverNames.ts";
import { unknownCrop } from "./cropNames.ts";
import type { Setting, SettingFile } from "./settingReader.ts";

type Bounds = readonly [low: number, high: number];

/** How the value of a catalogue field is written: a kind of quantity, a number within bounds, words to choose from, or a text. */
type Field =
  | { readonly quantity: QuantityKind }
  | { readonly temperature: Bounds }
  | { readonly number: Bounds; readonly orNone?: true; readonly whole?: true }
  | { readonly words: readonly string[] }
  | "gain"
  | "text";

const quantity = (kind: QuantityKind): Field => ({ quantity: kind });

/** Bounds that no crop leaves: beyond them a difference was written, or the wrong unit. [°C] judgement */
const temperature = (low: number, high: number): Field => ({ temperature: [low, high] });

/** More than any cover gains by night is how warm it is, not how much warmer. [°C] judgement */
const GAIN: Bounds = [-2, 12];

const number = (low: number, high: number): Field => ({ number: [low, high] });

const CROP: Readonly<Record<string, Field>> = {
  name: "text",
  "emergence.base": temperature(-3, 20),
  "emergence.sum": quantity("thermalTime"),
  "emergence.tooWarm": temperature(15, 55),
  "growth.base": temperature(-3, 20),
  "growth.optimumLow": temperature(5, 40),
  "growth.optimumHigh": temperature(5, 45),
  "growth.ceiling": temperature(15, 55),
  "growth.form": { words: RESPONSES },
  requirement: quantity("thermalTime"),
  "counted.sum": quantity("thermalTime"),
  "counted.method": { words: COUNTINGS },
  "counted.base": quantity("temperature"),
  "counted.upper": quantity("temperature"),
  "counted.cutOff": { words: CUT_OFFS },
  "counted.from": { words: ["sowing", "emergence"] },
  "counted.to": quantity("leaf"),
  requirementSpread: number(0, 2),
  lightOnPace: number(0, 10),
  lightOnWeight: number(0, 2),
  smallest: quantity("leaf"),
  largest: quantity("leaf"),
  yield: quantity("yield"),
  unfit: temperature(-20, 5),
  kill: temperature(-30, 5),
  killSoft: temperature(-30, 5),
  qualityLimit: temperature(10, 45),
  lightFloor: number(0, 60),
  regrowth: quantity("share"),
  cuts: { number: [1, 20], whole: true },
  storage: number(0, 60),
  boltingDay: { number: [0, 24], orNone: true },
};

const COVER: Readonly<Record<string, Field>> = {
  name: "text",
  kind: { words: ["shade", "rowCover", "film", "net"] },
  light: quantity("share"),
  "day.sun": number(0, 1),
  "day.still": number(0.1, 100),
  "day.windy": number(0, 100),
  "night.clear": "gain",
  "night.cloudy": "gain",
  frostCredit: "gain",
  "minutes.on": quantity("minutes"),
  "minutes.off": quantity("minutes"),
  "minutes.vent": quantity("minutes"),
};

type Value = number | string | null;

/** A temperature within bounds. [°C] */
function temperatureIn(setting: Setting, [low, high]: Bounds): number | null {
  const value = setting.quantity("temperature");
  if (value === null || (value >= low && value <= high)) return value;
  const [from, to] = [low, high].map((bound) => Math.round(toFahrenheit(celsius(bound))));
  return setting.fault(
    "temperature-out-of-range",
    `a temperature from ${from} F to ${to} F (${low} C to ${high} C)`,
    "Write how warm it is, not how much warmer.",
  );
}

/** What a cover gains, within what any cover gives. [°C] */
function gainIn(setting: Setting): number | null {
  const value = setting.quantity("temperatureDifference");
  const [low, high] = GAIN;
  if (value === null || (value >= low && value <= high)) return value;
  return setting.fault(
    "difference-out-of-range",
    "a difference of at most 22 F or 12 C",
    "Write how much warmer it is under the cover, not how warm.",
  );
}

function read(setting: Setting, field: Field): { readonly value: Value } | null {
  const given = (value: Value): { readonly value: Value } | null => (value === null ? null : { value });
  if (field === "text") return given(setting.text("a name"));
  if (field === "gain") return given(gainIn(setting));
  if ("words" in field) return given(setting.oneOf(field.words));
  if ("temperature" in field) return given(temperatureIn(setting, field.temperature));
  if ("quantity" in field) return given(setting.quantity(field.quantity));
  const [low, high] = field.number;
  if (field.orNone === true && setting.text("a number or none") === "none") return { value: null };
  return given(setting.number("a number", low, high, field.whole === true ? "whole" : undefined));
}

/** A copy of `base` with the field at a dotted path replaced. */
function put<Base extends object>(base: Base, path: string, value: Value): Base {
  const [key, ...rest] = path.split(".") as [keyof Base & string, ...string[]];
  const inner = base[key];
  const next = rest.length > 0 ? put((inner ?? {}) as object, rest.join("."), value) : value;
  return { ...base, [key]: next };
}

/** The catalogue with what the farm sets itself. `like` names an entry to start from: for a kind the catalogue does not hold. */
function overridden<Entry extends { readonly id: string }>(
  setting: Setting | null,
  known: ReadonlyMap<string, Entry>,
  fields: Readonly<Record<string, Field>>,
  what: string,
  problems: SettingFile["problems"],
): ReadonlyMap<string, Entry> {
  const entries = new Map(known);
  const group = setting?.settings(null) ?? null;
  for (const id of group?.names ?? []) {
    const own = group!.get(id)!;
    const values = own.settings(["like", ...Object.keys(fields)]);
    if (values === null) continue;
    const like = values.get("like")?.text(`the ${what} it is like`) ?? null;
    const base = entries.get(like ?? id);
    if (base === undefined) {
      const spot = like === null ? own.spot : values.get("like")!.spot;
      const names = [...known.keys()];
      const problem =
        what === "crop" ? unknownCrop(spot, like ?? id, names) : unknownCover(spot, like ?? id, names);
      const hint =
        like === null
          ? `${problem.hint} For another ${what}, add "like:" and the nearest known one.`
          : problem.hint;
      problems.push({ ...problem, hint });
      continue;
    }
    let entry: Entry = { ...base, id };
    if (like !== null) entry = put(entry, "name", id);
    for (const path of values.names) {
      const field = fields[path];
      const value = field === undefined ? null : read(values.get(path)!, field);
      if (value !== null) entry = put(entry, path, value.value);
    }
    entries.set(id, entry);
  }
  return entries;
}

/** A leaf is about 1 cm long at emergence; no salad size lies at or below it. [cm] */
const SHORTEST = 1.5;

/** Crops of the catalogue with the farm's own values. */
export function cropOverrides(
  setting: Setting | null,
  known: ReadonlyMap<string, Crop>,
  problems: SettingFile["problems"],
): ReadonlyMap<string, Crop> {
  const crops = new Map(overridden(setting, known, CROP, "crop", problems));
  const own = setting?.settings(null) ?? null;
  for (const crop of crops.values()) {
    const { id, growth, smallest, largest, kill, killSoft, unfit } = crop;
    const group = own?.get(id) ?? null;
    if (group === null) continue;
    crops.set(id, countedOverride(group, crop));
    const { base, optimumLow, optimumHigh, ceiling } = growth;
    if (!(base < optimumLow && optimumLow <= optimumHigh && optimumHigh < ceiling))
      group.fault(
        "growth-out-of-order",
        "growth.base below optimumLow, not above optimumHigh, below ceiling",
        "Correct the temperature that stands out.",
      );
    if (!(kill < killSoft && kill < unfit))
      group.fault(
        "frost-out-of-order",
        "kill, of hardened plants, below killSoft and below unfit",
        "Correct the temperature that stands out.",
      );
    if (!(SHORTEST < smallest && smallest < largest))
      group.fault(
        "sizes-out-of-order",
        "a smallest salad size above 1.5 cm (0.6 in) and below the largest",
        "Set both sizes.",
      );
  }
  return crops;
}

/** Covers of the catalogue with the farm's own values. */
export const coverOverrides = (
  setting: Setting | null,
  known: ReadonlyMap<string, Cover>,
  problems: SettingFile["problems"],
): ReadonlyMap<string, Cover> => overridden(setting, known, COVER, "cover", problems);
