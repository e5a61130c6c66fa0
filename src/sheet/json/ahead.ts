import type { Walk } from "../../decide/index.ts";
import type { Farm } from "../../farm/index.ts";
import type { Warning } from "../../watch/index.ts";
import type { DayWeather } from "../../weather/index.ts";
import { type Json, time } from "./written.ts";

export const walkJson = (farm: Farm, walk: Walk): Json => ({
  walk: walk.index,
  at: time(farm, walk.at),
  date: walk.date,
  part: walk.part,
  windMps: walk.wind,
  tooWindy: walk.tooWindy,
  frozen: walk.frozen,
  frozenThrough: walk.frozenThrough,
  snow: walk.snow,
});

export const dayJson = (farm: Farm, day: DayWeather): Json => ({
  date: day.date,
  lowC: day.low,
  highC: day.high,
  windMps: day.wind,
  windKnown: day.windKnown,
  lightMol: day.light,
  dayLengthH: day.dayLength,
  sunrise: time(farm, day.sunrise),
  sunset: time(farm, day.sunset),
  cloud: day.cloud,
  rainMm: day.rain,
  snowfallMm: day.snowfall,
  origin: day.origin,
  leadD: day.lead,
});

export function warningJson(warning: Warning): Json {
  const { kind, severity, date } = warning;
  const common = { kind, severity, date };
  switch (warning.kind) {
    case "frost":
      return {
        ...common,
        tunnel: warning.tunnel,
        successions: warning.beds.map(({ succession }) => succession),
        bareC: warning.bare,
        expectedC: warning.expected,
        promisedC: warning.promised,
        unfitC: warning.unfit,
        killC: warning.kill,
        risk: warning.risk,
        windy: warning.windy,
        past: warning.past ?? false,
        noClothLeft: warning.noClothLeft ?? null,
      };
    case "heat":
      return {
        ...common,
        tunnel: warning.tunnel,
        successions: warning.successions,
        ifLeftC: warning.ifLeft,
        plannedC: warning.planned,
        limitC: warning.limit,
        past: warning.past ?? false,
        noClothLeft: warning.noClothLeft ?? null,
      };
    case "wind":
      return { ...common, windMps: warning.wind, limitMps: warning.limit };
    case "snow":
      return { ...common, waterMm: warning.water, depthCm: warning.depth, tunnels: warning.tunnels };
    case "light":
      return { ...common, lightMol: warning.light, dayLengthH: warning.dayLength };
    case "bolting":
      return { ...common, succession: warning.succession, dayLengthH: warning.dayLength };
    case "seedbed":
      return { ...common, succession: warning.succession, seedbedC: warning.seedbed, limitC: warning.limit };
  }
}
