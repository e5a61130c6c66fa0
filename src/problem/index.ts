export * from "./didYouMean.ts";
export * from "./formatProblem.ts";
export * from "./list.ts";
export * from "./problem.ts";
