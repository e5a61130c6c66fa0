export * from "./didYouMean.ts";
export * from "./formatProblem.ts";
export * from "./problem.ts";
