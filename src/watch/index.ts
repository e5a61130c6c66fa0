export * from "./damage.ts";
export * from "./hardiness.ts";
export * from "./warning.ts";
export * from "./warnings.ts";
