import { catalogue } from "../farm/index.ts";
import {
  cropNamed,
  idNamed,
  lowAndHigh,
  MONTHS,
  nameAt,
  typedDate,
  type Units,
  unknownCover,
  unknownCrop,
  unknownName,
  WEEKDAYS,
} from "../folder/index.ts";
import type { Problem } from "../problem/index.ts";
import { type Celsius, type LocalDate, type Metre, parseQuantity } from "../quantity/index.ts";
import { usage } from "./context.ts";
import type { Given } from "./spec.ts";

/** What a farm needs besides its place, as far as the options say it. */
export interface FirstFarm {
  readonly beds: readonly { readonly crop: string; readonly length: Metre; readonly sown: LocalDate }[];
  /** Days of the week of the markets. */
  readonly markets: readonly string[];
  readonly cloths: readonly { readonly cover: string; readonly length: Metre }[];
  readonly usual: readonly { readonly month: string; readonly low: Celsius; readonly high: Celsius }[];
}

export const NOTHING: FirstFarm = { beds: [], markets: [], cloths: [], usual: [] };

const all = (given: Given, name: string): readonly string[] => {
  const texts = given[name];
  return Array.isArray(texts) ? texts : [];
};

const spot = (option: string) => ({ file: option, line: null, column: null });

/** Splits off the length at the end of "row-cover-19 60 ft". */
const lengthAtEnd = (text: string): readonly [string, Metre] | null => {
  const match = /^(.*?)[,\s]+(\d+(?:\.\d+)?\s*[a-z'′"″]+)$/iu.exec(text.trim());
  const length = match === null ? null : parseQuantity(match[2]!, "length", null).value;
  return length === null || length <= 0 ? null : [match![1]!, length];
};

/** Crop, length and date sown; a comma within a number or a date stays. */
const partsOfBed = (text: string): readonly string[] =>
  /^([^,]*),\s*(\d[^,]*(?:(?<=\d),\d[^,]*)?),\s*(?:sown\s+)?(.*)$/iu
    .exec(text.trim())
    ?.slice(1)
    .map((part) => part.trim()) ?? [];

/**
 * Reads the options that make a farm which can be planned; `problems` receives what is not right in them.
 *
 * @param today - The date at the farm.
 */
export function firstFarm(given: Given, units: Units, today: LocalDate, problems: Problem[]): FirstFarm {
  const { crops, covers } = catalogue();
  const bad = (option: string, expected: string, text: string, hint: string): readonly [] => {
    problems.push(usage(option, expected, text, hint));
    return [];
  };
  const [short, long] = units === "US" ? ["50 ft", "60 ft"] : ["15 m", "18 m"];
  const bed = `a bed like "arugula, ${short}, sown 2026-04-01"`;
  const beds = all(given, "bed").flatMap((text) => {
    const [name = "", length = "", sown = ""] = partsOfBed(text);
    const measured = parseQuantity(length, "length", null).value;
    const date = typedDate(sown, today, units);
    if (date !== null && "unclear" in date) return bad("--bed", bed, text, date.unclear);
    if (measured === null || measured <= 0 || date === null)
      return bad("--bed", bed, text, "Write crop, length with its unit, and date sown, with commas between.");
    const crop = cropNamed(name, crops);
    if (crop !== null) return [{ crop, length: measured, sown: date.date }];
    problems.push(unknownCrop(spot("--bed"), name, [...crops.keys()]));
    return [];
  });
  const cloths = all(given, "cloth").flatMap((text) => {
    const parts = lengthAtEnd(text);
    if (parts === null)
      return bad(
        "--cloth",
        `a cloth like "row-cover-19 ${long}"`,
        text,
        "Write cover and length with its unit.",
      );
    const [name, length] = parts;
    const cover = idNamed(name, covers);
    if (cover !== null) return [{ cover, length }];
    problems.push(unknownCover(spot("--cloth"), name, [...covers.keys()]));
    return [];
  });
  const usual = all(given, "usual").flatMap((text) => {
    const [, name = "", rest = ""] = /^\s*(\S+)\s+(.*?)\s*$/u.exec(text) ?? [];
    const month = MONTHS[nameAt(name, MONTHS)];
    const range = lowAndHigh(rest, units);
    const example = units === "US" ? "Apr 38 60" : "Apr 3 16";
    if (month === undefined || range.fault !== null)
      return bad("--usual", `a month's low and high like "${example}"`, text, "Write month, low and high.");
    return [{ month: month.slice(0, 3), low: range.low, high: range.high }];
  });
  const markets = all(given, "market").flatMap((text) => {
    const day = WEEKDAYS[nameAt(text, WEEKDAYS)];
    if (day !== undefined) return [day];
    problems.push(unknownName(spot("--market"), text, "a day of the week", WEEKDAYS, "word-unknown"));
    return [];
  });
  return { beds, markets: [...new Set(markets)], cloths, usual };
}
