import { scaleLinear } from "d3-scale";
import { curveMonotoneX, line } from "d3-shape";
import type { Outcome, SuccessionOutlook } from "../../decide/index.ts";
import { type CoursePoint, course } from "../../decide/index.ts";
import type { BedRow } from "../bedsTable.ts";
import { capital, dayOfMonth } from "../words.ts";
import { midnights } from "./days.ts";
import { px } from "./px.ts";
import { type Html, html } from "./tag.ts";

/** Stretched to the room there is; lines keep their width. */
const WIDTH = 150;
const HEIGHT = 32;

const path = (
  points: readonly CoursePoint[],
  which: "planned" | "unchanged",
  x: (at: number) => number,
  y: (length: number) => number,
): string =>
  line<CoursePoint>()
    .defined((point) => point[which] !== null)
    .x(({ at }) => x(at))
    .y((point) => y(point[which]!))
    .curve(curveMonotoneX)
    .digits(1)([...points]) ?? "";

const words = ({ who, tunnel, window, now, pick }: BedRow): string =>
  pick === null
    ? `Leaf of ${who}, ${tunnel}, over the days planned: ${now.middle} now; salad size ${window}.`
    : `Leaf of ${who}, ${tunnel}, over the days planned: ${now.middle} now; at the pick ${pick.planned.middle} with the plan, ${pick.unchanged.middle} left as it is; salad size ${window}.`;

/** Leaf length with the plan (solid) and left as it is (dashed), the salad size as a band, picks as upright lines. */
export function leafChart(outcome: Outcome, outlook: SuccessionOutlook, row: BedRow): Html | null {
  const points = course(outcome, outlook);
  const [first, last] = [points[0], points.at(-1)];
  if (first === undefined || last === undefined || outcome.air === null) return null;
  const { crop, fate } = outlook;
  const lengths = points.flatMap(({ planned, unchanged }) => [planned ?? 0, unchanged ?? 0]);
  const x = scaleLinear().domain([first.at, last.at]).range([0, WIDTH]);
  const y = scaleLinear()
    .domain([0, Math.max(crop.largest * 1.1, ...lengths)])
    .range([HEIGHT - 1, 1]);
  const top = px(y(crop.largest));
  const picks = [...new Set(outcome.picks.map(({ at }) => at))].filter((at) => at <= last.at);
  const cut = fate.kind === "none" ? null : fate.kind === "hold" ? fate.cut : fate.pick.at;
  const atCut = cut === null ? undefined : points.find(({ at }) => at === cut);
  const days = midnights(outcome.farm.place.zone, first.at, last.at);
  return html`<svg class="leaf" viewBox="0 0 ${WIDTH} ${HEIGHT}" preserveAspectRatio="none" role="img" aria-label="${capital(words(row))}">
<rect class="window" x="0" y="${top}" width="${WIDTH}" height="${px(y(crop.smallest) - y(crop.largest))}"/>
${days.map(({ at }) => html`<path class="midnight" d="M${px(x(at))},${HEIGHT}v-4"/>`)}
<path class="axis" d="M0,${HEIGHT - 0.5}H${WIDTH}"/>
${picks.map((at) => html`<path class="pick" d="M${px(x(at))},0V${HEIGHT}"/>`)}
<path class="left" d="${path(points, "unchanged", x, y)}"/>
<path class="planned" d="${path(points, "planned", x, y)}"/>
${atCut !== undefined && atCut.planned !== null && html`<path class="cut" d="M${px(x(atCut.at))},${px(y(atCut.planned))}h0"/>`}
</svg>
<p class="days screen" aria-hidden="true">${days.filter(({ at }) => x(at) < WIDTH * 0.9).map(({ at, date }) => html`<span style="left:${px((x(at) / WIDTH) * 100)}%">${dayOfMonth(date).slice(0, 3)}</span>`)}</p>`;
}
