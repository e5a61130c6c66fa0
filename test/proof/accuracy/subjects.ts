import { averages } from "./averages.ts";
import { chamberDays, chamberWeights } from "./chamber.ts";
import type { Subject } from "./check.ts";
import { coversFit, coversFree, coversShade } from "./covers.ts";
import { againstNormals, curves } from "./curves.ts";
import { againstIntegral, averagesAndCases, dayShapes } from "./degreeDays.ts";
import { emergenceFast, emergenceTable } from "./emergence.ts";
import { openLettuce, paceAndSize, requirements } from "./growth.ts";
import { hardeningRows } from "./hardening.ts";
import { dayLengths, radiation } from "./light.ts";
import { weathersAhead } from "./members.ts";
import { requirementUpdates } from "./requirement.ts";
import { responses } from "./responses.ts";
import { saladSize } from "./saladSize.ts";
import { scoresOfForecasts } from "./scores.ts";
import { snow } from "./snow.ts";

/** Everything that is compared, in the order of the model. */
export const SUBJECTS: readonly Subject[] = [
  curves,
  againstNormals,
  radiation,
  dayLengths,
  averages,
  averagesAndCases,
  dayShapes,
  againstIntegral,
  responses,
  requirements,
  paceAndSize,
  chamberDays,
  chamberWeights,
  openLettuce,
  coversFit,
  coversFree,
  coversShade,
  emergenceTable,
  emergenceFast,
  hardeningRows,
  snow,
  saladSize,
  scoresOfForecasts,
  requirementUpdates,
  weathersAhead,
];
