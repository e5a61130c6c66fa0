// Writes invented forecasts in the documented form of each service into test/cli/folders/foretold.
// Sources of the forms: nwsApi, metForecastJson in data/sources.json.

import { writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const folder = join(dirname(fileURLToPath(import.meta.url)), "..", "cli", "folders", "foretold");
const HOUR = 3_600_000;
const START = Date.parse("2026-04-20T09:00:00Z");
const UPDATED = "2026-04-20T08:41:17+00:00";

/** Invented air: warmest at 15 h on the farm's clock, a little warmer day by day. [°C] */
const air = (at) => {
  const clock = ((at / HOUR - 4) % 24) + (at % HOUR) / HOUR;
  const day = (at - START) / HOUR / 24;
  return Math.round((9 + 0.8 * day + 6.5 * Math.cos(((clock - 15) / 12) * Math.PI)) * 10) / 10;
};
const wind = (at) => Math.round((3 + 1.5 * Math.sin(at / HOUR / 7)) * 10) / 10;
const cloud = (at) => Math.round(50 + 45 * Math.sin(at / HOUR / 17));

const utc = (at) => new Date(at).toISOString().slice(0, 19);
const offset = (at) => `${utc(at)}+00:00`;
const local = (at) => `${utc(at - 4 * HOUR)}-04:00`;
const fahrenheit = (celsius) => Math.round(celsius * 1.8 + 32);
const mph = (speed) => Math.round(speed / 0.44704);

const WORDS = [
  [12, "Sunny"],
  [35, "Mostly Sunny"],
  [65, "Partly Sunny"],
  [90, "Mostly Cloudy"],
  [101, "Cloudy"],
];
const words = (percent) => WORDS.find(([below]) => percent < below)[1];

const write = (name, value) => writeFileSync(join(folder, name), `${JSON.stringify(value, null, 1)}\n`);
const hours = (count) => Array.from({ length: count }, (_, k) => START + k * HOUR);
const square = [
  [-72.86, 44.1],
  [-72.82, 44.1],
  [-72.82, 44.14],
  [-72.86, 44.14],
  [-72.86, 44.1],
];
const polygon = { type: "Polygon", coordinates: [square] };
const elevation = { unitCode: "wmoUnit:m", value: 190 };

const hourly = hours(72).map((at, index) => ({
  number: index + 1,
  name: "",
  startTime: local(at),
  endTime: local(at + HOUR),
  isDaytime: new Date(at - 4 * HOUR).getUTCHours() >= 6 && new Date(at - 4 * HOUR).getUTCHours() < 18,
  temperature: fahrenheit(air(at)),
  temperatureUnit: "F",
  temperatureTrend: null,
  probabilityOfPrecipitation: { unitCode: "wmoUnit:percent", value: 10 },
  windSpeed: `${mph(wind(at))} mph`,
  windDirection: "SW",
  shortForecast: words(cloud(at)),
  detailedForecast: "",
}));
write("nws-hourly.json", {
  "@context": ["https://geojson.org/geojson-ld/geojson-context.jsonld"],
  type: "Feature",
  geometry: polygon,
  properties: {
    units: "us",
    forecastGenerator: "HourlyForecastGenerator",
    generatedAt: "2026-04-20T09:12:05+00:00",
    updateTime: UPDATED,
    validTimes: "2026-04-20T02:00:00+00:00/P7DT23H",
    elevation,
    periods: hourly,
  },
});

const periods = Array.from({ length: 14 }, (_, k) => {
  const day = k % 2 === 0;
  const from = START + HOUR + (k * 24 * HOUR) / 2;
  const at = day ? from + 9 * HOUR : from + 9 * HOUR;
  const speed = mph(wind(at));
  return {
    number: k + 1,
    name: k === 0 ? "Today" : day ? "Day" : "Night",
    startTime: local(from),
    endTime: local(from + 12 * HOUR),
    isDaytime: day,
    temperature: fahrenheit(air(at)),
    temperatureUnit: "F",
    temperatureTrend: "",
    probabilityOfPrecipitation: { unitCode: "wmoUnit:percent", value: null },
    windSpeed: k % 3 === 0 ? `${speed} to ${speed + 4} mph` : `${speed} mph`,
    windDirection: "W",
    shortForecast: k === 4 ? "Chance Rain Showers" : words(cloud(at)),
    detailedForecast: "Invented.",
  };
});
write("nws-forecast.json", {
  type: "Feature",
  geometry: polygon,
  properties: {
    units: "us",
    forecastGenerator: "BaselineForecastGenerator",
    generatedAt: "2026-04-20T09:12:05+00:00",
    updateTime: UPDATED,
    validTimes: "2026-04-20T02:00:00+00:00/P7DT23H",
    elevation,
    periods,
  },
});

/** Values by the hour, equal ones that follow each other as one. */
const layer = (uom, value, count) => {
  const values = [];
  for (const at of hours(count)) {
    const last = values.at(-1);
    if (last?.value === value(at)) last.long++;
    else values.push({ at, long: 1, value: value(at) });
  }
  const span = (long) =>
    `P${long >= 24 ? `${Math.floor(long / 24)}D` : ""}${long % 24 > 0 ? `T${long % 24}H` : ""}`;
  return {
    uom: `wmoUnit:${uom}`,
    values: values.map((each) => ({ validTime: `${offset(each.at)}/${span(each.long)}`, value: each.value })),
  };
};
const extremes = (first, long, hour) => ({
  uom: "wmoUnit:degC",
  values: [0, 1, 2, 3, 4, 5].map((day) => ({
    validTime: `${offset(first + day * 24 * HOUR)}/PT${long}H`,
    value: Math.round((air(first + day * 24 * HOUR + hour * HOUR) + (hour > 6 ? -0.4 : 0.4)) * 10) / 10,
  })),
});
write("nws-gridpoints.json", {
  id: "https://api.weather.gov/gridpoints/XYZ/10,20",
  type: "Feature",
  geometry: polygon,
  properties: {
    updateTime: UPDATED,
    validTimes: "2026-04-20T02:00:00+00:00/P7DT23H",
    elevation,
    gridId: "XYZ",
    gridX: "10",
    gridY: "20",
    temperature: layer("degC", air, 150),
    maxTemperature: extremes(Date.parse("2026-04-20T11:00:00Z"), 13, 8),
    minTemperature: extremes(Date.parse("2026-04-20T23:00:00Z"), 14, 8),
    skyCover: layer("percent", cloud, 150),
    windSpeed: layer("km_h-1", (at) => Math.round(wind(at) * 36) / 10, 150),
    quantitativePrecipitation: {
      uom: "wmoUnit:mm",
      values: [
        { validTime: "2026-04-20T06:00:00+00:00/PT6H", value: 0 },
        { validTime: "2026-04-21T12:00:00+00:00/PT6H", value: 4.2 },
        { validTime: "2026-04-21T18:00:00+00:00/PT6H", value: null },
      ],
    },
    hazards: { values: [] },
  },
});
write("nws-points.json", {
  id: "https://api.weather.gov/points/44.12,-72.84",
  type: "Feature",
  properties: {
    gridId: "XYZ",
    gridX: 10,
    gridY: 20,
    forecast: "https://api.weather.gov/gridpoints/XYZ/10,20/forecast",
    forecastHourly: "https://api.weather.gov/gridpoints/XYZ/10,20/forecast/hourly",
    forecastGridData: "https://api.weather.gov/gridpoints/XYZ/10,20",
    timeZone: "America/New_York",
  },
});

/** Every hour for 51 hours, then at 0, 6, 12 and 18 h of universal time. */
const times = [
  ...hours(52),
  ...Array.from({ length: 24 }, (_, k) => Date.parse("2026-04-22T18:00:00Z") + k * 6 * HOUR),
];
const range = (at, pick) => pick(...[0, 1, 2, 3, 4, 5, 6].map((k) => air(at + k * HOUR)));
const met = (complete) => ({
  type: "Feature",
  geometry: { type: "Point", coordinates: [-72.84, 44.12, 190] },
  properties: {
    meta: {
      updated_at: "2026-04-20T08:41:17Z",
      units: {
        air_pressure_at_sea_level: "hPa",
        air_temperature: "celsius",
        ...(complete ? { air_temperature_max: "celsius", air_temperature_min: "celsius" } : {}),
        cloud_area_fraction: "%",
        precipitation_amount: "mm",
        relative_humidity: "%",
        wind_from_direction: "degrees",
        wind_speed: "m/s",
      },
    },
    timeseries: times.map((at, index) => {
      const rain =
        at >= Date.parse("2026-04-21T12:00:00Z") && at < Date.parse("2026-04-21T18:00:00Z") ? 0.7 : 0;
      const six = complete
        ? {
            air_temperature_max: range(at, Math.max),
            air_temperature_min: range(at, Math.min),
            precipitation_amount: 0,
          }
        : { precipitation_amount: 0 };
      return {
        time: `${utc(at)}Z`,
        data: {
          instant: {
            details: {
              air_pressure_at_sea_level: 1014.2,
              air_temperature: air(at),
              cloud_area_fraction: cloud(at),
              relative_humidity: 61.3,
              wind_from_direction: 240.1,
              wind_speed: wind(at),
            },
          },
          ...(index < 51
            ? {
                next_1_hours: {
                  summary: { symbol_code: "fair_day" },
                  details: { precipitation_amount: rain },
                },
              }
            : {}),
          ...(index < times.length - 1
            ? { next_6_hours: { summary: { symbol_code: "fair_day" }, details: six } }
            : {}),
        },
      };
    }),
  },
});
write("met-compact.json", met(false));
write("met-complete.json", met(true));
