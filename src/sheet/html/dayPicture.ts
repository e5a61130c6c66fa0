import { type ScaleLinear, scaleLinear } from "d3-scale";
import type { DateOutcome } from "../../learn/index.ts";
import { daysBetween } from "../../quantity/index.ts";
import type { BedScored } from "../scoreTold.ts";
import { px } from "./px.ts";
import { type Html, html } from "./tag.ts";

/** CSS pixels. */
const WIDTH = 220;
const HEIGHT = 26;
const EDGE = 6;

/** Days to both sides that are always shown. */
const LEAST = 4;

export type DayScale = ScaleLinear<number, number>;

/** Days from the one that was said; from the earliest where none was. */
function daysOf({ projected, early, late, actual }: DateOutcome): {
  readonly early: number;
  readonly late: number | null;
  readonly actual: number;
} {
  const said = projected ?? early;
  return {
    early: daysBetween(said, early),
    late: late === null ? null : daysBetween(said, late),
    actual: daysBetween(said, actual),
  };
}

/** One scale for all beds, the day said in its middle. */
export function dayScale(beds: readonly BedScored[]): DayScale {
  const away = beds.flatMap(({ outcome }) =>
    Object.values(daysOf(outcome)).map((days) => Math.abs(days ?? 0)),
  );
  const most = Math.max(LEAST, ...away);
  return scaleLinear()
    .domain([-most - 0.5, most + 0.5])
    .range([EDGE, WIDTH - EDGE]);
}

/** A range as a bar, the day said as an upright line, the day it was as a dot: filled inside the range, open outside it. */
export function dayPicture(bed: BedScored, x: DayScale, id: string): Html {
  const { who, said, range, was, off, outcome } = bed;
  const place = outcome.inside ? "inside the range" : "outside it";
  const { early, late, actual } = daysOf(outcome);
  const [from, to] = [x(early - 0.5), late === null ? WIDTH - 1 : x(late + 0.5)];
  return html`<svg class="days-off" viewBox="0 0 ${WIDTH} ${HEIGHT}" role="img" aria-labelledby="${id}-t ${id}-d">
<title id="${id}-t">${who}</title>
<desc id="${id}-d">Said ${said}, four of five cases in ${range}; was ${was}, ${off}${off !== "" && ", "}${place}.</desc>
<path class="gridline" d="M0,${HEIGHT / 2}H${WIDTH}"/>
<rect class="window" x="${px(from)}" y="5" width="${px(to - from)}" height="${HEIGHT - 10}"/>
${outcome.projected !== null && html`<path class="pick" d="M${px(x(0))},1V${HEIGHT - 1}"/>`}
<circle class="${outcome.inside ? "held" : "missed"}" cx="${px(x(actual))}" cy="${HEIGHT / 2}" r="5"/>
</svg>`;
}

/** The scale below the pictures: days earlier and later. */
export function dayAxis(x: DayScale): Html {
  const ticks = x.ticks(5).filter(Number.isInteger);
  return html`<svg class="days-off" viewBox="0 0 ${WIDTH} 20" aria-hidden="true">
${ticks.map(
  (tick) =>
    html`<path class="axis" d="M${px(x(tick))},0v4"/><text x="${px(x(tick))}" y="17" text-anchor="middle">${tick === 0 ? "said" : tick > 0 ? `+${tick}` : `−${-tick}`}</text>`,
)}
</svg>`;
}
