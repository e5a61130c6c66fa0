import type { Centimetre, Metre } from "./length.ts";
import { feet, inches } from "./length.ts";
import type { Kilogram } from "./mass.ts";
import { pounds } from "./mass.ts";
import type { MetrePerSecond } from "./speed.ts";
import { milesPerHour } from "./speed.ts";
import type { Celsius, CelsiusDifference, DegreeDays } from "./temperature.ts";
import { fahrenheit, fahrenheitDifference } from "./temperature.ts";

/** What can be read, and the unit it comes back in. */
export interface QuantityOf {
  /** [°C] */
  readonly temperature: Celsius;
  /** [°C] The same spellings as a temperature, another meaning: the kind of the field decides. */
  readonly temperatureDifference: CelsiusDifference;
  /** [°C·d] */
  readonly thermalTime: DegreeDays;
  /** [m] */
  readonly length: Metre;
  /** [cm] */
  readonly leaf: Centimetre;
  /** [kg] */
  readonly mass: Kilogram;
  /** [kg/m] */
  readonly yield: number;
  /** [min/m] */
  readonly effort: number;
  /** [m/s] */
  readonly speed: MetrePerSecond;
  /** [min] */
  readonly minutes: number;
  /** [1] */
  readonly share: number;
  /** In the farm's currency, per kilogram. */
  readonly price: number;
}

export type QuantityKind = keyof QuantityOf;

/** Why a text is no quantity of the kind asked for. */
export type QuantityFault = "notNumber" | "ambiguous" | "noUnit" | "unknownUnit" | "wrongKind";

export type ParsedQuantity<Value> =
  | { readonly value: Value; readonly fault: null }
  | { readonly value: null; readonly fault: QuantityFault };

/**
 * Converts a unit the table here does not hold into a base unit (m, cm, kg, kg/m, min/m, m/s, min), or gives null.
 * Never asked about temperatures.
 */
export type OtherUnits = (value: number, unit: string, base: string) => number | null;

type Conversions = Readonly<Record<string, (value: number) => number>>;

const itself = (value: number): number => value;
const times =
  (factor: number) =>
  (value: number): number =>
    value * factor;

const same = (spellings: readonly string[], convert: (value: number) => number): Conversions =>
  Object.fromEntries(spellings.map((spelling) => [spelling, convert]));

const FAHRENHEIT = ["f", "°f", "º f", "ºf", "degf", "deg f", "° f", "℉", "fahrenheit", "degrees f"];
const CELSIUS = ["c", "°c", "ºc", "º c", "degc", "deg c", "° c", "℃", "celsius", "degrees c"];
const CELSIUS_APART = ["c°", "c deg", "c degrees", "k"];
const FAHRENHEIT_APART = ["f°", "f deg", "f degrees"];
const DAYS = [" d", "·d", "*d", " days", " day"];

const METRES = same(["m", "metre", "metres", "meter", "meters"], itself);
const FEET = same(["ft", "foot", "feet", "'", "′", "’"], feet);
const INCHES = same(["in", "inch", "inches", '"', "″", "”"], inches);
const CENTIMETRES = same(["cm", "centimetre", "centimetres", "centimeter", "centimeters"], itself);
const MILLIMETRES = ["mm", "millimetre", "millimetres", "millimeter", "millimeters"];

const MINUTES: Conversions = {
  ...same(["min", "mins", "minute", "minutes"], itself),
  ...same(["h", "hr", "hrs", "hour", "hours"], times(60)),
  ...same(["s", "sec", "secs", "second", "seconds"], times(1 / 60)),
};

/** One unit per another, however it is joined: "min/m", "minutes per metre", "min a m". */
const per = (above: Conversions, below: Conversions): Conversions =>
  Object.fromEntries(
    Object.entries(above).flatMap(([unit, over]) =>
      Object.entries(below).flatMap(([each, under]) =>
        ["/", " / ", " per ", " a "].map((join) => [
          `${unit}${join}${each}`,
          (value: number) => over(value) / under(1),
        ]),
      ),
    ),
  );

const MASS: Conversions = {
  ...same(["kg", "kilo", "kilos", "kilogram", "kilograms"], itself),
  ...same(["g", "gram", "grams"], times(0.001)),
  ...same(["lb", "lbs", "pound", "pounds", "#"], pounds),
  ...same(["oz", "ounce", "ounces"], (value) => pounds(value / 16)),
};

/** The trade's spellings, lower case, each with its way to the unit of the kind. */
const SPELLINGS: Readonly<Record<QuantityKind, Conversions>> = {
  temperature: { ...same(CELSIUS, itself), ...same(FAHRENHEIT, fahrenheit) },
  temperatureDifference: {
    ...same([...CELSIUS, ...CELSIUS_APART], itself),
    ...same([...FAHRENHEIT, ...FAHRENHEIT_APART], fahrenheitDifference),
  },
  thermalTime: {
    ...same(
      CELSIUS.flatMap((unit) => DAYS.map((day) => unit + day)),
      itself,
    ),
    ...same(
      FAHRENHEIT.flatMap((unit) => DAYS.map((day) => unit + day)),
      fahrenheitDifference,
    ),
  },
  length: {
    ...METRES,
    ...FEET,
    ...same(Object.keys(INCHES), (value) => inches(value) / 100),
    ...same(Object.keys(CENTIMETRES), times(0.01)),
    ...same(MILLIMETRES, times(0.001)),
    ...same(["km"], times(1000)),
  },
  leaf: {
    ...CENTIMETRES,
    ...INCHES,
    ...same(MILLIMETRES, times(0.1)),
    ...same(Object.keys(METRES), times(100)),
    ...same(Object.keys(FEET), (value) => feet(value) * 100),
  },
  mass: MASS,
  yield: {
    ...same(["kg/m", "kg per m"], itself),
    ...same(["lb/ft", "lbs/ft", "lb per ft", "lb per foot"], (value) => pounds(value) / feet(1)),
    ...same(["oz/ft", "oz per ft", "oz per foot"], (value) => pounds(value / 16) / feet(1)),
  },
  effort: per(MINUTES, { ...METRES, ...FEET }),
  speed: {
    ...same(["m/s", "mps"], itself),
    ...same(["mph", "mi/h", "miles per hour"], milesPerHour),
    ...same(["km/h", "kmh", "kph", "kmph"], (value) => value / 3.6),
    // One nautical mile, 1852 m, an hour.
    ...same(["kn", "kt", "kts", "knot", "knots"], times(1852 / 3600)),
  },
  minutes: MINUTES,
  share: { "%": times(0.01), percent: times(0.01), "": itself },
  price: Object.fromEntries(
    Object.entries(MASS).flatMap(([unit, toKilogram]) => {
      const perKilogram = (value: number): number => value / toKilogram(1);
      return [`per ${unit}`, `/${unit}`, `/ ${unit}`, `a ${unit}`].map((each) => [each, perKilogram]);
    }),
  ),
};

/** Base units asked of an injected converter; null: temperatures, shares and prices stay within the table. */
const BASE: Readonly<Record<QuantityKind, string | null>> = {
  temperature: null,
  temperatureDifference: null,
  thermalTime: null,
  length: "m",
  leaf: "cm",
  mass: "kg",
  yield: "kg/m",
  effort: "minute/m",
  speed: "m/s",
  minutes: "minute",
  share: null,
  price: null,
};

/** Kinds written in several parts, as 5 ft 3 in. */
const IN_PARTS: ReadonlySet<QuantityKind> = new Set<QuantityKind>(["length", "leaf", "minutes"]);

const FRACTIONS: Readonly<Record<string, string>> = {
  "½": "1/2",
  "¼": "1/4",
  "¾": "3/4",
  "⅓": "1/3",
  "⅔": "2/3",
  "⅛": "1/8",
};

const NUMBER = String.raw`(?:\d+\s*\/\s*\d+|(?:\d+(?:[.,]\d+)*|[.,]\d+)(?:\s+\d+\/\d+)?)`;
const PART = new RegExp(String.raw`\s*([-+]?)\s*(${NUMBER})\s*((?:(?![-+]?${NUMBER}).)*)`, "suy");

/** A number with what stands behind it, before anything is understood of it. */
interface Part {
  readonly number: string;
  readonly unit: string;
}

const tidy = (text: string): string =>
  text
    .replace(/[½¼¾⅓⅔⅛]/gu, (sign) => ` ${FRACTIONS[sign]}`)
    .replace(/[−–]/gu, "-")
    .replace(/\p{Sc}/gu, "")
    .trim();

/** Splits "5 ft 3 in" into its numbers, each with its unit; null when something else stands before or between. */
function parts(text: string): readonly Part[] | null {
  const found: Part[] = [];
  PART.lastIndex = 0;
  while (PART.lastIndex < text.length) {
    const match = PART.exec(text);
    if (match === null) return null;
    const unit = match[3]!
      .trim()
      .replace(/[,;.]$/u, "")
      .trim();
    found.push({ number: match[1]! + match[2]!, unit: unit.toLowerCase().replace(/\s+/gu, " ") });
  }
  return found.length > 0 ? found : null;
}

/** A number as people write it; "ambiguous" for 1,500, which is fifteen hundred to some and one and a half to others. */
function numberOf(written: string): number | "ambiguous" | null {
  const sign = written.startsWith("-") ? -1 : 1;
  const [whole, rest] = written
    .replace(/^[-+]/u, "")
    .trim()
    .split(/\s+(?=\d+\/)/u);
  const plain = (text: string): number | "ambiguous" | null => {
    const ratio = /^(\d+)\s*\/\s*(\d+)$/u.exec(text);
    if (ratio !== null) return Number(ratio[2]) === 0 ? null : Number(ratio[1]) / Number(ratio[2]);
    if (/^\d{1,3}(?:,\d{3})+$/u.test(text)) return "ambiguous";
    return /^\d*[.,]?\d+$/u.test(text) ? Number(text.replace(",", ".")) : null;
  };
  const first = plain(whole!);
  const second = rest === undefined ? 0 : plain(rest);
  if (typeof first !== "number") return first;
  return typeof second === "number" ? sign * (first + second) : second;
}

const spelled = (kind: QuantityKind, unit: string): Conversions[string] | undefined =>
  Object.hasOwn(SPELLINGS[kind], unit) ? SPELLINGS[kind][unit] : undefined;

function convert(
  value: number,
  unit: string,
  kind: QuantityKind,
  other: OtherUnits | undefined,
): number | QuantityFault {
  const known = spelled(kind, unit);
  if (known !== undefined) return known(value);
  if (unit === "") return "noUnit";
  for (const another of Object.keys(SPELLINGS) as QuantityKind[])
    if (spelled(another, unit) !== undefined) return "wrongKind";
  const base = BASE[kind];
  const converted = base === null ? null : (other?.(value, unit, base) ?? null);
  return converted !== null && Number.isFinite(converted) ? converted : "unknownUnit";
}

/**
 * Reads one quantity as a grower writes it.
 *
 * @param kind - Decides the unit it comes back in, and whether "4 F" is a temperature or a difference.
 * @param stated - Unit the file states for numbers without one; null when it states none.
 * @param other - Converts units outside the trade's table, when given.
 * @returns The value, or why there is none. Never NaN.
 * @example parseQuantity("50 ft", "length", null).value // => 15.24
 * @example parseQuantity("50", "temperature", "F").value // => 10
 * @example parseQuantity("9 F", "temperatureDifference", null).value // => 5
 * @example parseQuantity("50", "length", null).fault // => "noUnit"
 */
export function parseQuantity<Kind extends QuantityKind>(
  text: string,
  kind: Kind,
  stated: string | null,
  other?: OtherUnits,
): ParsedQuantity<QuantityOf[Kind]> {
  const read = parseQuantities(text, kind, stated, other, IN_PARTS.has(kind) ? "sum" : "one");
  return read.fault === null ? { value: read.value[0]!, fault: null } : read;
}

/**
 * Reads several quantities of one kind from one text. A unit behind the last one counts for those without.
 *
 * @param join - "list": as many as there are; "sum": parts of one value, as 5 ft 3 in; "one": exactly one.
 * @example parseQuantities("3 in 4 in", "leaf", null).value // => [7.62, 10.16]
 * @example parseQuantities("7 8 9 cm", "leaf", null).value // => [7, 8, 9]
 */
export function parseQuantities<Kind extends QuantityKind>(
  text: string,
  kind: Kind,
  stated: string | null,
  other?: OtherUnits,
  join: "list" | "sum" | "one" = "list",
): ParsedQuantity<readonly QuantityOf[Kind][]> {
  const fail = (fault: QuantityFault): ParsedQuantity<never> => ({ value: null, fault });
  const found = parts(tidy(text));
  if (found === null || (join === "one" && found.length > 1)) return fail("notNumber");
  if (join === "sum" && found.slice(0, -1).some(({ unit }) => unit === "")) return fail("notNumber");
  const last = found.at(-1)!.unit;
  const values: number[] = [];
  for (const { number, unit } of found) {
    const value = numberOf(number);
    if (value === null) return fail("notNumber");
    if (value === "ambiguous") return fail("ambiguous");
    const named = unit !== "" ? unit : last !== "" ? last : (stated?.toLowerCase() ?? "");
    if (kind === "share" && named === "" && (value < 0 || value > 1)) return fail("ambiguous");
    const converted = convert(value, named, kind, other);
    if (typeof converted === "string") return fail(converted);
    values.push(converted);
  }
  const all = join === "sum" ? [values.reduce((sum, value) => sum + value, 0)] : values;
  return { value: all as QuantityOf[Kind][], fault: null };
}
