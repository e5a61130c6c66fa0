import type { Problem } from "../problem/index.ts";
import { sensorKey } from "./columnRole.ts";
import type { Dialect } from "./dialect.ts";

/** Which sensor of the farm each source of a log is: a column, or a station named in the rows. */
export type Assigned =
  | { readonly sensors: ReadonlyMap<string, string>; readonly others: readonly string[] }
  | { readonly problem: Problem };

/**
 * @param sources - Names as the file has them.
 * @param asked - The sensor the grower says.
 * @param several - Code of the problem when they are several the farm does not know.
 */
export function assigned(
  sources: readonly string[],
  farm: readonly string[],
  asked: string | null,
  problem: { readonly file: string; readonly line: number | null; readonly stations: boolean },
  dialect: Dialect,
): Assigned {
  const { file, line, stations } = problem;
  const keys = new Map(farm.map((sensor) => [sensorKey(sensor, dialect), sensor]));
  const own = new Map<string, string>();
  for (const source of sources) {
    const sensor = keys.get(sensorKey(source, dialect));
    if (sensor !== undefined) own.set(source, sensor);
  }
  const others = (taken: ReadonlyMap<string, string>): readonly string[] =>
    sources.filter((source) => !taken.has(source));
  if (asked !== null) {
    const named = new Map([...own].filter(([, sensor]) => sensor === asked));
    if (named.size > 0) return { sensors: named, others: others(named) };
    if (sources.length === 1) return { sensors: new Map([[sources[0]!, asked]]), others: [] };
  } else {
    if (own.size > 0) return { sensors: own, others: others(own) };
    if (sources.length === 1 && farm.length === 1)
      return { sensors: new Map([[sources[0]!, farm[0]!]]), others: [] };
  }
  if (sources.length > 1)
    return {
      problem: {
        code: "log-stations-several",
        weight: "stops",
        file,
        line,
        column: null,
        expected: `${stations ? "stations" : "columns"} named like a sensor in farm.yaml`,
        received: sources.join(", "),
        hint: `Give the sensors under "sensors" in farm.yaml these names; now there ${farm.length === 1 ? "is" : "are"} ${farm.join(", ")}.`,
      },
    };
  return {
    problem: {
      code: "usage",
      weight: "stops",
      file: "--sensor",
      line: null,
      column: null,
      expected: "the sensor the log belongs to",
      received: "nothing",
      hint:
        farm.length === 0
          ? "Name it, and say where it hangs: --sensor outside --hangs outside."
          : `Say one of ${farm.join(", ")}.`,
    },
  };
}
