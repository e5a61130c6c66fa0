export * from "./damage.ts";
export * from "./warning.ts";
export * from "./warnings.ts";
