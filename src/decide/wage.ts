import type { Scene } from "./scene.ts";

/** Worth of an hour's work: without prices, in kilograms by the usual price. */
export const wageOf = ({ farm, settings }: Pick<Scene, "farm" | "settings">): number =>
  farm.currency === null ? settings.wage / settings.price : farm.labour.wage;
