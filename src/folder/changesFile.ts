import type { Problem } from "../problem/index.ts";
import type { Instant } from "../quantity/index.ts";
import type { DifferingDay } from "./dailyFile.ts";
import { shown } from "./faults.ts";
import type { Differing } from "./mergeHours.ts";
import { hourText, type StoredHour, tidyName } from "./storeFile.ts";

/** The journal of what imports changed, beside the store. */
export const CHANGES = "changes.csv";

const VERSION = 1;
const TITLE = "leafpace changes";
const HEADER =
  "when,file,sensor,hour,mean before,mean after,sum before,count before,lowest before,highest before,file before";

/** [°C], to hundredths */
const mean = ({ sum, count }: StoredHour): number => Math.round((100 * sum) / count) / 100;

type Cells = readonly (string | number)[];

const ofHour = (sensor: string, { before, after }: Differing): Cells => [
  after.origin,
  tidyName(sensor),
  hourText(before.hour),
  mean(before),
  mean(after),
  before.sum,
  before.count,
  before.lowest,
  before.highest,
  before.origin,
];

/** Of a day the store holds the low and the high alone. */
const ofDay = (sensor: string, { before, origin }: DifferingDay): Cells => [
  origin,
  tidyName(sensor),
  before.date,
  ...["", "", "", ""],
  before.low,
  before.high,
  "",
];

/**
 * The journal with hours, or days of a daily record, put behind it that an import gave other readings. Of those before it
 * keeps all: what counts now stands in the store.
 *
 * @param text - The journal as it is; null: there is none.
 */
export function withChanges(
  text: string | null,
  at: Instant,
  sensor: string,
  differing: readonly (Differing | DifferingDay)[],
): { readonly text: string } | { readonly problem: Problem } {
  const title = (text ?? `${TITLE} ${VERSION}`).replace(/^\uFEFF?"?/u, "").split(/\r?\n/u, 1)[0]!;
  const version = Number(new RegExp(`^${TITLE} (\\d+)\\b`, "u").exec(title)?.[1] ?? 0);
  if (version !== VERSION)
    return {
      problem: {
        code: "store-version",
        weight: "stops",
        file: `temperature/${CHANGES}`,
        line: 1,
        column: null,
        expected: `a first line "${TITLE} ${VERSION}"`,
        received: shown(title),
        hint:
          version > VERSION
            ? "A newer leafpace wrote it; use that one."
            : "Give this file another name; leafpace import then begins a new one.",
      },
    };
  const when = `${new Date(at).toISOString().slice(0, 16)}Z`;
  const lines = differing.map((one) =>
    [when, ...("origin" in one ? ofDay(sensor, one) : ofHour(sensor, one))].join(","),
  );
  const begun = text ?? `${TITLE} ${VERSION},UTC hours,degrees Celsius\n${HEADER}\n`;
  return { text: `${begun}${begun.endsWith("\n") ? "" : "\n"}${lines.join("\n")}\n` };
}
