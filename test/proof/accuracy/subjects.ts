import { averages } from "./averages.ts";
import type { Subject } from "./check.ts";
import { coversFit, coversFree, coversShade } from "./covers.ts";
import { emergenceFast, emergenceTable } from "./emergence.ts";
import { hardeningRows } from "./hardening.ts";
import { saladSize } from "./saladSize.ts";

/** Everything that is compared, in the order of the model. */
export const SUBJECTS: readonly Subject[] = [
  averages,
  coversFit,
  coversFree,
  coversShade,
  emergenceTable,
  emergenceFast,
  hardeningRows,
  saladSize,
];
