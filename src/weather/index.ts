export * from "./diurnal.ts";
export * from "./outside.ts";
export * from "./quality.ts";
export * from "./record.ts";
export * from "./sun.ts";
export * from "./weather.ts";
export * from "./weatherOf.ts";
