import { catalogue, type Note } from "../../src/farm/index.ts";
import type { IssuedOutlook } from "../../src/folder/index.ts";
import { addDays, celsius, HOUR, hourOf, instant, type LocalDate } from "../../src/quantity/index.ts";
import { type Score, type ScoreInput, score } from "../../src/score.ts";
import type { DailyRecord, HourlyRecord } from "../../src/weather/index.ts";
import { at, cm, cut, date, farmOf, kg, leaf, note, outlook, pickAt, sheetOn, sown } from "../learn/noted.ts";
import { sample } from "./sample.ts";

/** Ten beds on one sheet, made by hand so that every figure can be counted. */

const MONDAY = date("2026-04-20");
const friday = pickAt("2026-04-24");

/** What was said of each bed and what came: day said, day it was, odds, size at the pick [cm], weights [kg]. */
const BEDS: readonly (readonly [
  said: number,
  was: number,
  odds: number,
  size: number,
  expected: number,
  cut: number | null,
])[] = [
  [2, 2, 0.8, 10, 6, 5],
  [2, 3, 0.8, 9.5, 6, 6],
  [1, 3, 0.8, 9, 5, 4],
  [3, 3, 0.7, 9, 5, null],
  [1, 4, 0.7, 7, 4, 3],
  [2, 4, 0.5, 8.5, 4, 4],
  [3, 2, 0.5, 10, 6, 7],
  [4, 4, 0.2, 8, 3, null],
  [4, 5, 0.1, 7.5, 3, null],
  [3, 4, 0.1, 8, 3, null],
];

const id = (i: number): string => `S${String(i + 1).padStart(2, "0")}`;
const cropOf = (i: number): string => (i < 6 ? "arugula" : "kale");
const day = (after: number): LocalDate => addDays(MONDAY, after);

const saidOf = (i: number): IssuedOutlook => {
  const [said, , odds, , expected] = BEDS[i]!;
  const size = { low: cm(8), middle: cm(9), high: cm(10) };
  return outlook(id(i), {
    crop: cropOf(i),
    cropName: cropOf(i),
    reach: day(said),
    emergence: i === 9 ? { at: at(day(2)), seen: false } : null,
    early: day(said - 1),
    late: day(said + 2),
    atPicks: [{ pick: friday, size, odds, weight: kg(expected) }],
    fate: { as: "salad", cut: friday.at, pick: friday, weight: kg(expected) },
  });
};

/** Two leaves around the day it came to 8 cm, half a day to both sides; the size at the pick; the cut. */
const notesOf = (i: number): readonly Note[] => {
  const [, was, , size, , weight] = BEDS[i]!;
  const noon = at(day(was), 12);
  const half = 12 * HOUR;
  const around = [leaf(instant(noon - half), id(i), 7.5), leaf(instant(noon + half), id(i), 8.5)];
  const seen = Math.abs(noon - friday.at) > 1.4 * 24 * HOUR ? [leaf(friday.at, id(i), size)] : [];
  return [
    ...around,
    ...seen,
    ...(weight === null ? [] : [cut(was < 4 ? at(day(4), 7) : at(day(5), 5), id(i), weight)]),
  ];
};

/** A log that goes from 5 °C at midnight to 15 °C at noon and back. */
const hours: readonly HourlyRecord[] = Array.from({ length: 6 * 24 }, (_, i) => {
  const mean = celsius(5 + 10 * (1 - Math.abs((i % 24) - 12) / 12));
  return { hour: hourOf(instant(at(MONDAY, 0) + i * HOUR)), mean, lowest: mean, highest: mean, count: 6 };
});

/** Says lows of 4 °C and highs of 16: 1 °C too cold, 1 °C too warm. */
const foretold: readonly DailyRecord[] = [0, 1, 2].map((after) => ({
  date: day(after),
  low: celsius(4),
  high: celsius(16),
  wind: null,
  sky: null,
}));

const beds = BEDS.map((_, i) => i);

export const scoreInput = (changed: Partial<ScoreInput> = {}): ScoreInput => ({
  farm: farmOf(
    beds.map((i) => sown(id(i), cropOf(i))),
    [...beds.flatMap(notesOf), note(at(day(3)), { kind: "emerged", succession: "S10" })],
  ),
  settings: catalogue().settings,
  sensors: [{ sensor: "outside", hours }],
  forecasts: [{ issued: at(MONDAY, 5), days: foretold }],
  sheets: [
    sheetOn(at(MONDAY, 7), beds.map(saidOf), [
      {
        product: "spicy",
        pick: friday,
        expected: kg(9),
        ordered: kg(8),
        successions: ["S01", "S02"],
      },
    ]),
  ],
  on: at("2026-05-10", 7),
  problems: sample().problems,
  ...changed,
});

export const scored = (changed: Partial<ScoreInput> = {}): Score => score(scoreInput(changed));
