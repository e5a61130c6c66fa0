export * from "./accumulate.ts";
export * from "./degreeDays.ts";
export * from "./emergence.ts";
export * from "./leafLength.ts";
export * from "./ownRequirement.ts";
export * from "./pace.ts";
export * from "./response.ts";
export * from "./weight.ts";
