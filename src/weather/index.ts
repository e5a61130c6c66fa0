export * from "./diurnal.ts";
export * from "./lightOfDay.ts";
export * from "./record.ts";
export * from "./shortDays.ts";
export * from "./sun.ts";
export * from "./usualOn.ts";
export * from "./weather.ts";
export * from "./weatherOf.ts";
