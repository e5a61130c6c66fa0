// Writes the invented weather of the example farm: hollow-creek/logger-export.csv and hollow-creek/forecast.csv as they
// are on Monday, logger-wednesday.csv and forecast-wednesday.csv as they are two days later.
//
//   node examples/make.mjs            into examples/hollow-creek
//   node examples/make.mjs FOLDER     into FOLDER
//
// The same bytes every time: one seed, and only + − × ÷ on the way, which every machine rounds alike.

import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

const SEED = 20260414;

/** Minutes of a day and between two readings. [min] */
const DAY = 1440;
const STEP = 15;

/** First day of the log; all minutes below are counted from its midnight on standard time. */
const FIRST = Date.UTC(2026, 1, 20);

/** @param {string} wall date and time as "2026-02-20 14:30", on standard time @returns {number} [min] */
const minute = (wall) => (Date.parse(`${wall.replace(" ", "T")}Z`) - FIRST) / 60_000;

/** The clock on the barn wall goes forward here, and the logger's with it. */
const CLOCK_CHANGE = minute("2026-03-08 02:00");

/** Last reading: Monday 06:45 on the wall, 05:45 on standard time. */
const LAST = minute("2026-04-20 05:45");

/** The battery was dead: no rows from one reading to the other, both on standard time. */
const GAP = { after: minute("2026-04-03 21:45"), until: minute("2026-04-04 07:00") };

/** Somebody held the logger in a warm hand and the plug slipped. */
const SPIKE = { at: minute("2026-03-28 13:15"), shown: 188.6 };

/** Usual lows and highs of the valley by date, joined by straight lines. [°F] */
const USUAL = [
  { date: "2026-02-20", low: 13, high: 34 },
  { date: "2026-02-28", low: 21, high: 43 },
  { date: "2026-03-08", low: 28, high: 51 },
  { date: "2026-03-20", low: 33, high: 56 },
  { date: "2026-04-05", low: 36, high: 60 },
  { date: "2026-04-21", low: 41, high: 64 },
].map(({ date, low, high }) => ({ at: minute(`${date} 00:00`), low, high }));

/** Sunrise on standard time, first and last day of the log; the highest temperature comes at the same time all along. [min] */
const SUNRISE = { first: 6 * 60 + 38, last: 4 * 60 + 58 };
const WARMEST = 14 * 60 + 40;

/** The week ahead as told on Monday at 5:00: lows and highs [°F], mean wind of the day [mph], sky. */
const FORECAST = [
  { date: "2026-04-20", low: 41, high: 62, wind: 6, sky: "mixed" },
  { date: "2026-04-21", low: 44, high: 72, wind: 5, sky: "sun" },
  { date: "2026-04-22", low: 49, high: 78, wind: 7, sky: "sun" },
  { date: "2026-04-23", low: 40, high: 51, wind: 13, sky: "mixed" },
  { date: "2026-04-24", low: 31, high: 52, wind: 4, sky: "sun" },
  { date: "2026-04-25", low: 33, high: 55, wind: 6, sky: "mixed" },
  { date: "2026-04-26", low: 38, high: 53, wind: 8, sky: "cloud" },
  { date: "2026-04-27", low: 37, high: 57, wind: 7, sky: "mixed" },
  { date: "2026-04-28", low: 38, high: 60, wind: 6, sky: "mixed" },
  { date: "2026-04-29", low: 40, high: 62, wind: 6, sky: "sun" },
];

/** How the days from Monday on turned out; the last point only closes the curve. [°F] */
const CAME = [
  { at: "2026-04-19 14:40", value: 63 },
  { at: "2026-04-20 04:58", value: 40.2 },
  { at: "2026-04-20 14:40", value: 60.5 },
  { at: "2026-04-21 04:57", value: 44.5 },
  { at: "2026-04-21 14:40", value: 74.2 },
  { at: "2026-04-22 04:55", value: 50.1 },
  { at: "2026-04-22 14:40", value: 79 },
].map(({ at, value }) => ({ at: minute(at), value, bright: 0.7 }));
const SEED_AGAIN = 20260422;

/** Wednesday 11:45 on the wall, when the logger is read again. */
const LAST_AGAIN = minute("2026-04-22 10:45");

/** The days ahead as told on Wednesday at 11:00: the frost has become sharper, the days after it milder. */
const FORECAST_AGAIN = [
  { date: "2026-04-22", low: 50, high: 79, wind: 8, sky: "sun" },
  { date: "2026-04-23", low: 39, high: 49, wind: 14, sky: "mixed" },
  { date: "2026-04-24", low: 28, high: 51, wind: 3, sky: "sun" },
  { date: "2026-04-25", low: 34, high: 58, wind: 5, sky: "sun" },
  { date: "2026-04-26", low: 40, high: 59, wind: 7, sky: "mixed" },
  { date: "2026-04-27", low: 41, high: 61, wind: 7, sky: "mixed" },
  { date: "2026-04-28", low: 40, high: 62, wind: 6, sky: "mixed" },
  { date: "2026-04-29", low: 41, high: 63, wind: 6, sky: "sun" },
];

/**
 * Evenly spread numbers in [0, 1): a 32-bit Weyl sequence, stirred twice.
 *
 * @param {number} seed
 * @returns {() => number}
 */
function chance(seed) {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x9e3779b9) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 16), 0x21f0aaad);
    mixed = Math.imul(mixed ^ (mixed >>> 15), 0x735a2d97);
    return ((mixed ^ (mixed >>> 15)) >>> 0) / 4_294_967_296;
  };
}

/** Roughly normal, mean 0, standard deviation 1. @param {() => number} next */
function bell(next) {
  let sum = 0;
  for (let i = 0; i < 12; i++) sum += next();
  return sum - 6;
}

/** @param {number} value @param {number} low @param {number} high */
const clamp = (value, low, high) => Math.min(high, Math.max(low, value));

/** Eased step from 0 to 1, flat at both ends. @param {number} share */
const ease = (share) => share * share * (3 - 2 * share);

/** Usual low and high at a minute. @param {number} at */
function usual(at) {
  const next = USUAL.findIndex((knot) => knot.at > at);
  const after = USUAL.at(next === -1 ? -1 : next);
  const before = USUAL.at(next === -1 ? -1 : next - 1);
  if (!before || !after) throw new RangeError("The usual weather has no knots.");
  const share = before === after ? 0 : (at - before.at) / (after.at - before.at);
  return {
    low: before.low + share * (after.low - before.low),
    high: before.high + share * (after.high - before.high),
  };
}

/**
 * Turning points of the log: every day's low at sunrise and high in the afternoon.
 * Warm and cold spells follow one another over a few days; a bright day has a colder dawn and a warmer afternoon.
 *
 * @param {() => number} next
 * @returns {{ at: number, value: number, bright: number }[]} [min], [°F], [0–1]
 */
function turns(next) {
  const days = Math.ceil((LAST + 1) / DAY);
  const points = [];
  let spell = -1;
  let sky = 0;
  for (let day = -1; day <= days; day++) {
    spell = 0.72 * spell + 0.69 * bell(next);
    sky = 0.45 * sky + 0.89 * bell(next);
    const bright = clamp(0.55 + 0.3 * sky, 0, 1);
    const { low, high } = usual(Math.max(0, day * DAY));
    const rise = SUNRISE.first + ((SUNRISE.last - SUNRISE.first) * day) / (days - 1);
    const told = FORECAST.find(({ date }) => minute(`${date} 00:00`) === day * DAY);
    points.push({
      at: day * DAY + Math.round(rise),
      value: told ? told.low : low + 4.2 * spell - 7 * (bright - 0.55),
      bright,
    });
    points.push({
      at: day * DAY + WARMEST,
      value: told ? told.high : high + 5.2 * spell + 9 * (bright - 0.55),
      bright,
    });
  }
  return points;
}

/**
 * Temperature between two turning points: an eased rise by day, and a fall that is quick at first and slow towards dawn.
 *
 * @param {{ at: number, value: number }} from
 * @param {{ at: number, value: number }} to
 * @param {number} at
 */
function between(from, to, at) {
  const share = (at - from.at) / (to.at - from.at);
  if (to.value >= from.value) return from.value + (to.value - from.value) * ease(share);
  const left = 1 - share;
  return to.value + (from.value - to.value) * (0.45 * left * left + 0.55 * (1 - ease(share)));
}

/** @param {number} value @param {number} width */
const pad = (value, width) => String(value).padStart(width, "0");

/** A minute on standard time as the logger prints it: month first, twelve hours. @param {number} at */
function stamp(at) {
  const wall = new Date(FIRST + (at + (at >= CLOCK_CHANGE ? 60 : 0)) * 60_000);
  const date = `${pad(wall.getUTCMonth() + 1, 2)}/${pad(wall.getUTCDate(), 2)}/${wall.getUTCFullYear()}`;
  const hour = wall.getUTCHours();
  return `${date} ${pad(hour % 12 || 12, 2)}:${pad(wall.getUTCMinutes(), 2)}:00 ${hour < 12 ? "AM" : "PM"}`;
}

/**
 * An export of the logger between two minutes.
 *
 * @param {() => number} next
 * @param {{ at: number, value: number, bright: number }[]} points turning points
 * @param {number} first
 * @param {number} last
 */
function loggerExport(next, points, first, last) {
  const rows = ["Logger export - Hollow Creek outside", "No.,Date/Time,Temperature (°F),Battery (V)"];
  let turn = 0;
  let flutter = 0;
  for (let at = first; at <= last; at += STEP) {
    while (points[turn + 1].at <= at) turn++;
    const from = points[turn];
    const to = points[turn + 1];
    const byDay = to.value > from.value;
    // Passing clouds and gusts: livelier by day, and most on a day of sun and cloud.
    const lively = byDay ? 0.25 + 1.6 * to.bright * (1 - to.bright) : 0.15;
    flutter = 0.8 * flutter + 0.6 * lively * bell(next);
    const value = between(from, to, at) + flutter + 0.08 * bell(next);
    const battery = 3.08 - (0.17 * at) / LAST + 0.0012 * (value - 40) + 0.004 * bell(next);
    if (at > GAP.after && at < GAP.until) continue;
    const shown = at === SPIKE.at ? SPIKE.shown : value;
    rows.push(`${rows.length - 1},${stamp(at)},${shown.toFixed(1)},${battery.toFixed(2)}`);
  }
  return `${rows.join("\r\n")}\r\n`;
}

/** @param {typeof FORECAST} days */
function forecast(days) {
  const rows = days.map(({ date, low, high, wind, sky }) => [date, low, high, wind, sky].join(","));
  return `${["date,low (F),high (F),wind (mph),sky", ...rows].join("\n")}\n`;
}

const folder = process.argv[2] ?? fileURLToPath(new URL("hollow-creek", import.meta.url));
mkdirSync(folder, { recursive: true });
const next = chance(SEED);
const files = {
  "logger-export.csv": loggerExport(next, turns(next), 0, LAST),
  "forecast.csv": forecast(FORECAST),
  "logger-wednesday.csv": loggerExport(chance(SEED_AGAIN), CAME, LAST + STEP, LAST_AGAIN),
  "forecast-wednesday.csv": forecast(FORECAST_AGAIN),
};
for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text);
