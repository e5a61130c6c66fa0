export * from "./warning.ts";
export * from "./damage.ts";
export * from "./warnings.ts";
