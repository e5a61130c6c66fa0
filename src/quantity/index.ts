export * from "./brand.ts";
export * from "./length.ts";
export * from "./light.ts";
export * from "./mass.ts";
export * from "./speed.ts";
export * from "./temperature.ts";
export * from "./time.ts";
export * from "./zone.ts";
