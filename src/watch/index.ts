export * from "./warning.ts";
