export * from "./forecastError.ts";
export * from "./normal.ts";
export * from "./requirement.ts";
export * from "./scores.ts";
