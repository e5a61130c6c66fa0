import { type FarmSettings, withKind } from "../folder/index.ts";
import type { Instant } from "../quantity/index.ts";
import type { Batch, Written } from "./batch.ts";
import { recordImport, type Stored } from "./recordImport.ts";
import type { Given } from "./spec.ts";
import { storeDays, storeForecast, storeHours, storeLogKinds, storePlace } from "./storing.ts";
import { saidOf, type Understanding } from "./understand.ts";

/** What goes into the store one after the other. */
function* layers(
  batch: Batch,
  understood: readonly Understanding[],
  given: Given,
  farm: FarmSettings,
  place: readonly [string, string] | null,
): Generator<Promise<Stored>> {
  for (const one of understood) {
    if (one.kind === "forecast") yield storeForecast(batch, one.forecast);
    else
      for (const { sensor, hours, days } of one.sensors) {
        yield storeHours(batch, sensor, hours);
        yield storeDays(batch, sensor, days, one.file);
      }
  }
  const said = saidOf(given);
  yield storeLogKinds(batch, (before) =>
    understood.reduce(
      (kinds, one) => (one.kind === "log" ? withKind(kinds, said, one.read.header, one.file) : kinds),
      before,
    ),
  );
  if (place !== null) yield storePlace(batch, farm, place);
}

/** Everything understood goes into the store as one, and what was said of the logs is remembered with it. */
export const storeImport = (
  dir: string,
  understood: readonly Understanding[],
  given: Given,
  farm: FarmSettings,
  place: readonly [string, string] | null,
  at: Instant,
): Promise<Stored> =>
  recordImport(
    dir,
    understood.map(({ file }) => file),
    at,
    async (batch) => {
      const written: Written[] = [];
      for (const layer of layers(batch, understood, given, farm, place)) {
        const stored = await layer;
        if (stored.problems.length > 0) return { written: [], problems: stored.problems };
        written.push(...stored.written);
      }
      return { written, problems: [] };
    },
  );
