import type { Problem } from "../problem/index.ts";
import { PLAIN } from "./dialect.ts";
import type { LogOptions, LogSaid } from "./logReading.ts";
import type { SectionFound, Series } from "./section.ts";
import { assigned } from "./stations.ts";

/** One sensor's part of a log, from every section that has it. */
export interface Gathered {
  readonly source: string;
  readonly section: SectionFound;
  readonly series: Series[];
}

const sourcesOf = ({ layout, series }: SectionFound): readonly string[] => {
  if (layout.station !== null) return [...series.keys()];
  if (layout.of.kind === "days" || layout.of.columns[0]?.clock !== null) return [""];
  return layout.of.columns.map(({ name }) => name);
};

/** Every section's sources under the names of the farm's sensors. */
export function gathered(
  options: LogOptions,
  said: LogSaid,
  sections: readonly SectionFound[],
):
  | { readonly bySensor: ReadonlyMap<string, Gathered>; readonly others: readonly string[] }
  | { readonly problem: Problem } {
  const { file, farm, dialect = PLAIN } = options;
  const bySensor = new Map<string, Gathered>();
  const others = new Set<string>();
  const stations = [...new Set(sections.filter(({ layout }) => layout.station !== null).flatMap(sourcesOf))];
  for (const section of sections) {
    const inRows = section.layout.station !== null;
    const spot = { file, line: section.layout.line, stations: inRows };
    const found = assigned(inRows ? stations : sourcesOf(section), farm.sensors, said.sensor, spot, dialect);
    if ("problem" in found) return found;
    for (const other of found.others) others.add(other);
    for (const [source, sensor] of found.sensors) {
      const series = section.series.get(source);
      if (series === undefined) continue;
      const before = bySensor.get(sensor);
      if (before === undefined) bySensor.set(sensor, { source, section, series: [series] });
      else before.series.push(series);
    }
  }
  return { bySensor, others: [...others] };
}
