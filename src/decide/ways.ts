import { type Cells, cellsOf, emptyRuns, fillRuns } from "./cells.ts";
import { placeOf, quality } from "./evaluate.ts";
import { readAt } from "./harvest.ts";
import type { Load, Prices } from "./prices.ts";
import type { OutletTable, SuccessionTable } from "./successionTable.ts";
import type { TunnelProblem } from "./tunnelProblem.ts";

/** An outlet of a bed, with what any covers at all can make of it. */
export interface Prospect {
  readonly table: SuccessionTable;
  readonly outlet: OutletTable;
  /** Place of the outlet among its bed's. */
  readonly index: number;
  /** Rows of its harvest that it can be cut at. */
  readonly first: number;
  readonly rows: number;
  /** Thermal times it can be cut at, and the places of the cells' edges in those rows. */
  readonly time: Cells;
  readonly places: Float64Array;
  /** Light it can have had, and the share of full weight that the most light of each cell allows. */
  readonly light: Cells;
  readonly share: Float64Array;
}

/** The least and the most that settings can make of a sum up to an outlet. */
function rangeOf(
  { intervals: n, settings }: TunnelProblem,
  start: number,
  values: Float64Array,
  adds: Float64Array,
  interval: number,
): readonly [number, number] {
  const S = settings.length;
  let [least, most] = [start + Math.min(...adds), start + Math.max(...adds)];
  for (let i = 0; i < Math.min(n, interval); i++) {
    const row = values.subarray(i * S, (i + 1) * S);
    least += Math.min(...row);
    most += Math.max(...row);
  }
  return [least, most];
}

export function prospectsOf(problem: TunnelProblem, table: SuccessionTable): readonly Prospect[] {
  return table.outlets.map((outlet, index) => {
    const { interval, harvest } = outlet;
    const time = cellsOf(...rangeOf(problem, table.thermalTime, table.pace, outlet.pace, interval));
    const light = cellsOf(...rangeOf(problem, table.light, table.lightIn, outlet.light, interval));
    const places = time.edges.map((edge) => placeOf(table, outlet, edge));
    const last = harvest.salad.length - 1;
    const row = (place: number): number => Math.min(last, Math.max(0, Math.floor(place)));
    const first = row(places[0]! - 1);
    return {
      table,
      outlet,
      index,
      first,
      rows: row(places[places.length - 1]! + 2) - first + 1,
      time,
      places: places.map((place) => place - first),
      light,
      share: light.edges.subarray(1).map((edge) => problem.lightShare(table, edge, outlet.days)),
    };
  });
}

/** An outlet at some prices. */
export interface Way extends Prospect {
  /** Worth of the bed by the place of its thermal time in its harvest, from the first row it can be cut at. */
  readonly worth: Float64Array;
  /** Kilograms cut of it in full light, by the same place; null: nothing bounds them. */
  readonly cut: Float64Array | null;
  readonly highest: number;
  /** Cost of cutting it. */
  readonly cutting: number;
  readonly tooMuch: Prices["tooMuch"];
  /** Its highest over runs of cells of thermal time; null: not asked yet. */
  runs: Float64Array | null;
}

/** Worth of cutting where there is nothing worth cutting. */
const NEVER_CUT = -1e12;

/** Nothing is worth cutting in a run of cells of thermal time. @param from - First cell. @param to - Last one. */
export const isClosed = ({ table, outlet, first, places }: Prospect, from: number, to: number): boolean =>
  !table.mustCut && (places[to + 1]! + first < outlet.pays[0] || places[from]! + first > outlet.pays[1]);

/** What a bed can bring by place, at the prices of its market in each group of weathers. */
export function wayOf(problem: TunnelProblem, prospect: Prospect, prices: Prices): Way {
  const { table, outlet, first, rows } = prospect;
  const { salad, other, cut } = outlet.harvest;
  const { mass, price } = table;
  const { kept, share, moved } = outlet;
  const paid = prices.salad(table, outlet);
  const rest = prices.handling(outlet);
  const last = salad.length - 1;
  const worth = new Float64Array(rows);
  const cutWhole = prices.tooMuch === null ? null : new Float64Array(rows);
  const sooner = price * kept * (1 - share);
  const others = price * kept * share;
  for (let k = 0; k < moved.length; k++) {
    const weight = problem.weathers[k]!;
    const from = first + moved[k]!;
    const forSalad = mass * (paid[k]! * kept - weight * sooner);
    const forOther = mass * weight * others;
    const forCut = mass * weight * rest;
    for (let i = 0; i < rows; i++) {
      const at = Math.min(last, Math.max(0, from + i));
      worth[i]! += forSalad * salad[at]! + forOther * other[at]! - forCut * cut[at]!;
      if (cutWhole !== null) cutWhole[i]! += mass * weight * cut[at]!;
    }
  }
  const [from, to] = outlet.pays;
  if (!table.mustCut) {
    worth.fill(NEVER_CUT, 0, Math.max(0, from - first));
    worth.fill(NEVER_CUT, Math.max(0, to + 1 - first));
  }
  let highest = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < rows; i++) highest = Math.max(highest, worth[i]!);
  const cutting = table.cutting * (problem.minute + prices.cutting(outlet));
  return { ...prospect, worth, cut: cutWhole, highest, cutting, tooMuch: prices.tooMuch, runs: null };
}

export function runsOf(way: Way): Float64Array {
  if (way.runs !== null) return way.runs;
  const { worth, places } = way;
  const runs = emptyRuns();
  let before = readAt(worth, places[0]!);
  for (let k = 0; k + 1 < places.length; k++) {
    const edge = places[k + 1]!;
    const after = readAt(worth, edge);
    let top = Math.max(before, after);
    for (let i = Math.max(0, Math.floor(places[k]!) + 1); i < worth.length && i < edge; i++)
      top = Math.max(top, worth[i]!);
    runs[k] = top;
    before = after;
  }
  fillRuns(runs);
  way.runs = runs;
  return runs;
}

/** Place of a cut in its bed's harvest, from the first row it can be cut at, and what its light, heat and wet leave of its worth. */
const cutPlace = (
  problem: TunnelProblem,
  { table, outlet, first }: Way,
  thermalTime: number,
  light: number,
  heat: number,
  dry: number,
) => ({
  place: placeOf(table, outlet, thermalTime) - first,
  share: problem.lightShare(table, light, outlet.days) * quality(heat, problem) * dry,
});

/** What a cut takes. @param safe - Logarithm of its chance to come through. @param dry - See `keptDry`. [0–1] */
export function loadAt(
  problem: TunnelProblem,
  way: Way,
  thermalTime: number,
  light: number,
  heat: number,
  safe: number,
  dry: number,
): Load {
  const { place, share } = cutPlace(problem, way, thermalTime, light, heat, dry);
  const through = Math.exp(safe);
  return {
    outlet: way.outlet,
    minutes: way.table.cutting * through,
    kilograms: way.cut === null ? 0 : readAt(way.cut, place) * share * through,
  };
}

/** What a cut brings, what grows again after it left out. @param safe - Logarithm of its chance to come through. @param dry - See `keptDry`. [0–1] */
export function cutAt(
  problem: TunnelProblem,
  way: Way,
  slope: number,
  thermalTime: number,
  light: number,
  heat: number,
  safe: number,
  dry: number,
): number {
  const { table, outlet, first, worth, cutting, tooMuch } = way;
  const { place, share } = cutPlace(problem, way, thermalTime, light, heat, dry);
  if (!table.mustCut && (place < outlet.pays[0] - first || place > outlet.pays[1] - first))
    return Number.NEGATIVE_INFINITY;
  const beyond = tooMuch === null ? 0 : tooMuch([loadAt(problem, way, thermalTime, light, heat, safe, dry)]);
  return (readAt(worth, place) * share - cutting) * Math.exp(safe) + slope * safe - beyond;
}
