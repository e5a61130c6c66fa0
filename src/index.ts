/**
 * Leafpace as a library: read a farm folder's texts, plan its week, print the sheet. Pure; needs no Node.
 *
 * @module
 */
export { type Beds, beds } from "./beds.ts";
export * from "./cover/index.ts";
export * from "./decide/index.ts";
export * from "./farm/index.ts";
export * from "./folder/index.ts";
export * from "./growth/index.ts";
export * from "./learn/index.ts";
export { replay } from "./play.ts";
export * from "./problem/index.ts";
export * from "./quantity/index.ts";
export { score } from "./score.ts";
export {
  bedsJson,
  bedsText,
  crewText,
  promiseChanges,
  promiseText,
  scoreJson,
  scoreText,
  weekJson,
  weekText,
} from "./sheet/index.ts";
export * from "./watch/index.ts";
export * from "./weather/index.ts";
export { week } from "./week.ts";
