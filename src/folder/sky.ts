import type { DailyRecord } from "../weather/index.ts";

/** What forecasts call the sky, in the three words the model knows. */
export const SKY: Readonly<Record<string, NonNullable<DailyRecord["sky"]>>> = {
  sun: "sun",
  sunny: "sun",
  clear: "sun",
  fair: "sun",
  mixed: "mixed",
  "partly cloudy": "mixed",
  "partly sunny": "mixed",
  "mostly sunny": "mixed",
  cloud: "cloud",
  cloudy: "cloud",
  "mostly cloudy": "cloud",
  overcast: "cloud",
  rain: "cloud",
  showers: "cloud",
  snow: "cloud",
};

/** Those of them that say rain or snow, and nothing of how much. */
export const WET: readonly string[] = ["rain", "showers", "snow"];
