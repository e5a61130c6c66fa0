import { averages } from "./averages.ts";
import type { Subject } from "./check.ts";

/** Everything that is compared, in the order of the model. */
export const SUBJECTS: readonly Subject[] = [averages];
