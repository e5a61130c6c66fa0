export * from "./normal.ts";
export * from "./requirement.ts";
