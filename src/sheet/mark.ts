import type { SuccessionOutlook } from "../decide/index.ts";

/** From this share of its time on without a log, a size is a guess and called one. [1] judgement */
const MOSTLY = 0.5;

/** Is its size now a guess, because no log and no leaf says how it grew? */
export const isGuess = ({ guessed }: Pick<SuccessionOutlook, "guessed">): boolean => guessed > MOSTLY;

/** Before a size or date of a succession whose growth is known by judgement or memory only and by no leaf measured on the farm, or is a guess. */
export const mark = (outlook: SuccessionOutlook): string => {
  const { crop, measured } = outlook;
  const judged =
    measured === 0 && (crop.requirementStanding === "judgement" || crop.requirementStanding === "memory");
  return judged || isGuess(outlook) ? "~" : "";
};
