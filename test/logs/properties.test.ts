import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { mergeHours, type StoredHour, tidyHour } from "../../src/folder/index.ts";
import { readLog } from "./readLog.ts";
import { type Hour, hoursOf, type Series, seriesOf } from "./series.ts";
import {
  bytesOf,
  CLOCKS,
  DATES,
  EXTRAS,
  type Extra,
  HEADERS,
  optionsOf,
  possible,
  type Style,
  tableOf,
  textOf,
  UNITS,
} from "./style.ts";

const SEED = 20_260_420;

const keys = <Key extends string>(record: Readonly<Record<Key, unknown>>): readonly Key[] =>
  Object.keys(record) as Key[];

const series: fc.Arbitrary<Series> = fc.integer({ min: 0, max: 2 ** 31 }).map(seriesOf);

const style: fc.Arbitrary<Style> = fc
  .record<Style>({
    date: fc.constantFrom(...keys(DATES)),
    clock: fc.constantFrom(...keys(CLOCKS)),
    together: fc.constantFrom(" ", "T", null),
    unit: fc.constantFrom(...UNITS),
    header: fc.constantFrom(...HEADERS),
    separator: fc.constantFrom(",", ";", "\t", "|"),
    decimal: fc.constantFrom(".", ","),
    decimals: fc.constantFrom(1, 2),
    quotes: fc.constantFrom("none", "all", "some"),
    padding: fc.constantFrom("", " "),
    lineEnd: fc.constantFrom("\n", "\r\n", "\r"),
    lastLineEnds: fc.boolean(),
    extras: fc.subarray<Extra>([...keys(EXTRAS)], { maxLength: 4 }),
    ranks: fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 9, maxLength: 9 }),
    titles: fc.constantFrom([], ["Garden logger 7"], ["Serial number: 0012", "Place: behind the shed"]),
    blankLines: fc.boolean(),
    newestFirst: fc.boolean(),
    silent: fc.constantFrom(null, "", "---", "NaN"),
    minus: fc.constantFrom("-", "−"),
    encoding: fc.constantFrom("utf8", "utf8 with mark", "utf16le", "latin1"),
  })
  .map(possible);

const written = (measured: Series, as: Style): Buffer =>
  bytesOf(textOf(tableOf(measured, as), as), as.encoding);

const plain = (hours: readonly Hour[]) =>
  hours.map(({ hour, sum, count, lowest, highest }) =>
    [hour, sum, count, lowest, highest].map((value) => Number(value.toFixed(6))),
  );

const store = (hours: readonly Hour[]): readonly StoredHour[] =>
  hours.map(({ hour, sum, count, lowest, highest }) => ({
    hour,
    sum,
    count,
    lowest,
    highest,
    origin: "log.csv",
  }));

const stored = (hours: readonly StoredHour[]) => plain(hours.map(tidyHour));

describe("any series of readings", () => {
  test("written in any supported way reads back to the same hours", async () => {
    await fc.assert(
      fc.asyncProperty(series, style, async (measured, as) => {
        const { hours, problems } = await readLog(written(measured, as), {
          zone: measured.zone,
          ...optionsOf(as, measured),
        });
        expect(hours, JSON.stringify(problems)).not.toBeNull();
        expect(plain(hours!)).toEqual(plain(hoursOf(measured)));
      }),
      { numRuns: 500, seed: SEED },
    );
  }, 120_000);

  test("imported in parts that meet at full hours is the whole, in whatever order they come", async () => {
    await fc.assert(
      fc.asyncProperty(series, style, fc.nat(), fc.boolean(), async (measured, as, at, swapped) => {
        const whole = hoursOf(measured);
        const { hour: border } = whole[1 + (at % (whole.length - 1))]!;
        const parts = [true, false].map((before) => ({
          ...measured,
          readings: measured.readings.filter((reading) => reading.at < border * 3_600_000 === before),
        }));
        const [first, second] = swapped ? parts.reverse() : parts;
        const dated = { ...as, date: "2026-04-03" as const };
        const read = async (part: Series): Promise<readonly StoredHour[]> => {
          const { hours, problems } = await readLog(written(part, dated), {
            zone: part.zone,
            ...optionsOf(dated, part),
          });
          expect(hours, JSON.stringify(problems)).not.toBeNull();
          return store(hours!);
        };
        expect(stored(mergeHours(await read(first!), await read(second!)).hours)).toEqual(
          stored(store(whole)),
        );
      }),
      { numRuns: 200, seed: SEED },
    );
  }, 120_000);

  test("imported again changes nothing", () => {
    fc.assert(
      fc.property(series, (measured) => {
        const hours = store(hoursOf(measured)).map(tidyHour);
        expect(mergeHours(hours, hours).hours).toEqual(hours);
      }),
      { numRuns: 200, seed: SEED },
    );
  });
});
