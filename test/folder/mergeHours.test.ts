import fc from "fast-check";
import { expect, test } from "vitest";
import { mergeHours, type StoredHour, withChanges } from "../../src/folder/index.ts";
import { instant, utcHour } from "../../src/quantity/index.ts";

const hour = (at: number, count: number, mean: number, origin = "log.csv"): StoredHour => ({
  hour: utcHour(at),
  sum: mean * count,
  count,
  lowest: mean - 1,
  highest: mean + 1,
  origin,
});

const means = (hours: readonly StoredHour[]): (readonly number[])[] =>
  hours.map(({ hour: at, sum, count }) => [at, count, sum / count]);

test("a later import wins over an earlier one, and the hours it changed are told with both", () => {
  const before = [hour(1, 4, 10), hour(2, 4, 10), hour(3, 4, 10)];
  const { hours, differing } = mergeHours(before, [hour(2, 4, 12), hour(3, 2, 12), hour(4, 4, 12)]);
  expect(means(hours)).toEqual([
    [1, 4, 10],
    [2, 4, 12],
    [3, 2, 12],
    [4, 4, 12],
  ]);
  expect(differing).toEqual([
    { before: before[1], after: hour(2, 4, 12) },
    { before: before[2], after: hour(3, 2, 12) },
  ]);
});

test("an hour the import cuts at its end does not push out a fuller one", () => {
  const { hours, differing } = mergeHours([hour(1, 4, 10), hour(2, 4, 10)], [hour(1, 1, 12), hour(2, 4, 12)]);
  expect([means(hours).map(([, , mean]) => mean), differing.length]).toEqual([[10, 12], 1]);
});

test("an hour cut by the end of one file and the beginning of the next has the readings of both", () => {
  const [first, second] = [
    [hour(1, 4, 10), hour(2, 2, 10)],
    [hour(2, 2, 14), hour(3, 4, 10)],
  ] as const;
  const whole = [
    [1, 4, 10],
    [2, 4, 12],
    [3, 4, 10],
  ];
  for (const [a, b] of [
    [first, second],
    [second, first],
  ] as const) {
    const { hours, differing } = mergeHours(mergeHours([], a).hours, b);
    expect([means(hours), differing]).toEqual([whole, []]);
    for (const again of [a, b]) expect(mergeHours(hours, again).hours).toEqual(hours);
  }
});

test("more readings of an hour that was cut before are no difference", () => {
  const cut: StoredHour = { ...hour(2, 2, 10), lowest: 9.5, highest: 10.5 };
  const { hours, differing } = mergeHours([cut], [hour(1, 4, 10), hour(2, 4, 10), hour(3, 4, 10)]);
  expect([hours.length, hours[1]?.count, differing]).toEqual([3, 4, []]);
});

test("the same readings from a file of another name change nothing", () => {
  const once = [hour(1, 2, 10), hour(2, 4, 10)];
  expect(mergeHours(once, [hour(1, 2, 10, "again.csv"), hour(2, 4, 10, "again.csv")])).toEqual({
    hours: once,
    differing: [],
  });
});

/** A log as sums of whole hours, some of which were not logged. */
const log = fc
  .array(fc.option(fc.integer({ min: -300, max: 400 }), { freq: 9 }), { minLength: 1, maxLength: 240 })
  .map((tenths) => tenths.flatMap((each, at) => (each === null ? [] : [hour(490_000 + at, 4, each / 10)])));

test("importing twice equals once", () => {
  fc.assert(
    fc.property(log, log, (stored, imported) => {
      const once = mergeHours(stored, imported);
      expect(mergeHours(once.hours, imported)).toEqual({ hours: once.hours, differing: [] });
    }),
    { seed: 1 },
  );
});

test("parts cut at the ends of days, in any order and overlapping or not, equal the whole", () => {
  const parts = log.chain((whole) => {
    const dayOf = ({ hour: at }: StoredHour): number => Math.floor(at / 24);
    const days = [...new Set(whole.map(dayOf))].map((day) => whole.filter((each) => dayOf(each) === day));
    const stretch = fc
      .tuple(fc.nat(days.length), fc.nat(days.length))
      .map((ends) => days.slice(Math.min(...ends), Math.max(...ends)).flat());
    const all = fc.shuffledSubarray(days, { minLength: days.length });
    return fc.record({ whole: fc.constant(whole), days: all, overlaps: fc.array(stretch, { maxLength: 3 }) });
  });
  fc.assert(
    fc.property(parts, ({ whole, days, overlaps }) => {
      const merged = [...overlaps, ...days].reduce<readonly StoredHour[]>(
        (stored, part) => mergeHours(stored, part).hours,
        [],
      );
      expect(merged).toEqual(whole);
    }),
    { seed: 1 },
  );
});

test("the journal keeps all of an hour that was replaced, and grows at its end only", () => {
  const at = instant(Date.parse("2026-04-20T15:00:00Z"));
  const differing = [{ before: hour(493_000, 4, 10), after: hour(493_000, 2, 12.345, "again.csv") }];
  const first = withChanges(null, at, "outside", differing) as { readonly text: string };
  expect(first.text).toBe(
    "leafpace changes 1,UTC hours,degrees Celsius\nwhen,file,sensor,hour,mean before,mean after,sum before,count before,lowest before,highest before,file before\n2026-04-20T15:00Z,again.csv,outside,2026-03-29T16Z,10,12.35,40,4,9,11,log.csv\n",
  );
  const second = withChanges(first.text.trimEnd(), at, "outside", differing) as { readonly text: string };
  expect(second.text).toBe(
    `${first.text}2026-04-20T15:00Z,again.csv,outside,2026-03-29T16Z,10,12.35,40,4,9,11,log.csv\n`,
  );
  expect(withChanges("leafpace changes 2\n", at, "outside", differing)).toMatchObject({
    problem: { received: '"leafpace changes 2"', hint: "A newer leafpace wrote it; use that one." },
  });
});
