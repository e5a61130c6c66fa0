// Records that are daily by nature: a low and a high for each day.
import { days, lines, two } from "./kit.mjs";

/** [date, low, high] of some days in March 2026, in °C. */
const march = Array.from({ length: 20 }, (_, index) => [
  `2026-03-${two(index + 1)}`,
  Number((-2 + ((index * 7) % 11) * 0.5).toFixed(1)),
  Number((8 + ((index * 5) % 13) * 0.6).toFixed(1)),
]);
const whole = march.map(([date, low, high]) => [
  date,
  Math.round(low * 1.8 + 32),
  Math.round(high * 1.8 + 32),
]);
const mean = (low, high) => ((low + high) / 2).toFixed(1);
const parts = (date) => date.split("-");
const germanDate = (date) => parts(date).toReversed().join(".");
const kept = (rows, unit) => ({ days: { outside: days(rows, unit) } });

export const daily = [
  {
    name: "daily-low-mean-high",
    about: "Low, mean and high of each day.",
    content: lines(
      "Date,Low (°C),Mean (°C),High (°C)",
      march.map(([date, low, high]) => `${date},${low},${mean(low, high)},${high}`),
    ),
    ...kept(march),
  },
  {
    name: "daily-high-low-fahrenheit",
    about: "High before low, whole °F, month first; only days of March above twelve settle the order.",
    content: lines(
      "Date,High °F,Low °F,Rain (in)",
      whole.map(
        ([date, low, high]) => `${Number(parts(date)[1])}/${Number(parts(date)[2])}/2026,${high},${low},0.1`,
      ),
    ),
    ...kept(whole, "F"),
  },
  {
    name: "daily-german",
    about: "Tagesminimum, Tagesmaximum, decimal commas, day first.",
    zone: "Europe/Berlin",
    units: "metric",
    content: lines(
      "Datum;Maximum (°C);Minimum (°C);Mittel (°C);Niederschlag (mm)",
      march.map(
        ([date, low, high]) =>
          `${germanDate(date)};${String(high).replace(".", ",")};${String(low).replace(".", ",")};${mean(low, high).replace(".", ",")};0,2`,
      ),
    ),
    ...kept(march),
  },
  {
    name: "daily-day-first-by-order",
    about: "1/3, 2/3, 3/3 … 12/3: only with the day first do days follow each other.",
    zone: "Europe/London",
    units: "metric",
    content: lines(
      "Date,Min (°C),Max (°C)",
      march
        .slice(0, 12)
        .map(
          ([date, low, high]) => `${Number(parts(date)[2])}/${Number(parts(date)[1])}/2026,${low},${high}`,
        ),
    ),
    ...kept(march.slice(0, 12)),
  },
  {
    name: "daily-tenths",
    about: "An observer's record: compact dates, tenths of a degree as the header says, nothing as -9999.",
    content: lines(
      "STATION,DATE,TMAX (tenths of degrees C),TMIN (tenths of degrees C)",
      march.map(
        ([date, low, high], index) =>
          `X0041,${date.replaceAll("-", "")},${index === 6 ? -9999 : Math.round(high * 10)},${index === 9 ? -9999 : Math.round(low * 10)}`,
      ),
    ),
    ...kept(march.filter((_, index) => index !== 6 && index !== 9)),
  },
  {
    name: "daily-elements-in-rows",
    about: "An observer's record with a row for each element: TMAX, TMIN and rain, tenths as a title says.",
    content: lines(
      "Temperatures in tenths of degrees Celsius, rain in tenths of mm",
      "station,date,element,value",
      march.map(([date, low, high]) => [
        `X0041,${date.replaceAll("-", "")},TMAX,${Math.round(high * 10)}`,
        `X0041,${date.replaceAll("-", "")},TMIN,${Math.round(low * 10)}`,
        `X0041,${date.replaceAll("-", "")},PRCP,12`,
      ]),
    ),
    ...kept(march),
  },
  {
    name: "daily-observer",
    about:
      "A volunteer's form in °F: time of observation, M for missing, T for a trace of rain, one day with low and high changed over.",
    content: lines(
      "Date,Obs time,Max (F),Min (F),At obs (F),Rain (in)",
      whole.map(
        ([date, low, high], index) =>
          `${date},0700,${index === 3 ? "M" : index === 12 ? low : high},${index === 12 ? high : low},${low + 3},${index % 4 === 0 ? "T" : "0.00"}`,
      ),
    ),
    ...kept(
      whole.filter((_, index) => index !== 3 && index !== 12),
      "F",
    ),
    warns: [],
  },
  {
    name: "daily-newest-first",
    about: "Newest day first, months named.",
    content: lines(
      "Date,Low (°C),High (°C)",
      march.toReversed().map(([date, low, high]) => `Mar ${Number(parts(date)[2])} 2026,${low},${high}`),
    ),
    ...kept(march),
  },
  {
    name: "daily-times-of-extremes",
    about: "The times of low and high stand between.",
    content: lines(
      "Date,Low (°C),at,High (°C),at",
      march.map(([date, low, high]) => `${date},${low},05:40,${high},14:50`),
    ),
    ...kept(march),
  },
  {
    name: "daily-two-stations",
    about: "Daily lows and highs of two stations in rows, named like the farm's sensors.",
    sensors: ["outside", "tunnel-1"],
    content: lines(
      "Station,Date,Low (°C),High (°C)",
      march.map(([date, low, high]) => [
        `outside,${date},${low},${high}`,
        `tunnel-1,${date},${(low + 2).toFixed(1)},${(high + 9).toFixed(1)}`,
      ]),
    ),
    days: {
      outside: days(march),
      "tunnel-1": days(
        march.map(([date, low, high]) => [date, Number((low + 2).toFixed(1)), Number((high + 9).toFixed(1))]),
      ),
    },
  },
  {
    name: "daily-no-unit",
    about: "Lows and highs without a unit: refused.",
    content: lines(
      "Date,Low,High",
      whole.map(([date, low, high]) => `${date},${low},${high}`),
    ),
    problem: { code: "log-unit-missing", line: 2, names: ["--unit"] },
  },
  {
    name: "daily-mean-only",
    about: "A mean for each day, no low and high: refused, as a mean makes no night and no noon.",
    content: lines(
      "Date,Daily mean (°C)",
      march.map(([date, low, high]) => `${date},${mean(low, high)}`),
    ),
    problem: { code: "log-time-missing", names: ["low", "high"] },
  },
];
