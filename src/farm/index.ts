export * from "./catalogue.ts";
export * from "./cover.ts";
export * from "./crop.ts";
export * from "./farm.ts";
export * from "./history.ts";
export * from "./place.ts";
export * from "./setting.ts";
export * from "./settings.ts";
