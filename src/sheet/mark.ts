import type { SuccessionOutlook } from "../decide/index.ts";

/** Before a size or date of a succession whose growth is known by judgement or memory only and by no leaf measured on the farm. */
export const mark = ({ crop, measured }: SuccessionOutlook): string =>
  measured === 0 && (crop.requirementStanding === "judgement" || crop.requirementStanding === "memory")
    ? "~"
    : "";
