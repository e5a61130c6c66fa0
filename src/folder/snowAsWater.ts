import { catalogue } from "../farm/index.ts";

/** New snow as water, at its usual depth. @param depth - [m] @returns [mm] */
export const snowAsWater = (depth: number): number => (depth * 1000) / catalogue().settings.newSnow;
