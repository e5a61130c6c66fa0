export * from "./climate.ts";
export * from "./effect.ts";
