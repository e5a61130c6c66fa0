export * from "./emergence.ts";
export * from "./leafLength.ts";
export * from "./pace.ts";
export * from "./response.ts";
export * from "./weight.ts";
export * from "./accumulate.ts";
