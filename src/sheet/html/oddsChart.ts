import { scaleLinear } from "d3-scale";
import type { Reliability } from "../../learn/index.ts";
import { aboutInFive } from "../scoreWords.ts";
import { px } from "./px.ts";
import { type Html, html } from "./tag.ts";

/** CSS pixels. */
const SIDE = 260;
const LEFT = 44;
const FOOT = 42;
const EDGE = 10;
/** Above the plot, for its name. */
const HEAD = 24;

const TICKS = [0, 0.2, 0.4, 0.6, 0.8, 1] as const;

const inFive = (share: number): string => (share === 0 ? "0" : `${Math.round(share * 5)} in 5`);

/** How often it came against what was said; upright lines: what so few leave open; on the slanting line both agree. */
export function oddsChart({ bins }: Reliability): Html | null {
  if (bins.length === 0) return null;
  const x = scaleLinear().range([LEFT, SIDE - EDGE]);
  const y = scaleLinear().range([SIDE - FOOT, HEAD]);
  const told = bins.map(({ fifth, came }) => `said ${aboutInFive(fifth)}: was ${came.hits} of ${came.count}`);
  return html`<svg class="odds" viewBox="0 0 ${SIDE} ${SIDE}" role="img" aria-labelledby="odds-t odds-d">
<title id="odds-t">Odds of salad size: said and come</title>
<desc id="odds-d">${told.join("; ")}.</desc>
${TICKS.map(
  (tick) =>
    html`<path class="gridline" d="M${LEFT},${px(y(tick))}H${SIDE - EDGE}"/><path class="axis" d="M${px(x(tick))},${SIDE - FOOT}v4"/>`,
)}
${[0, 0.4, 0.8].map(
  (tick) =>
    html`<text x="${LEFT - 4}" y="${px(y(tick) + 4.5)}" text-anchor="end">${inFive(tick)}</text><text x="${px(x(tick))}" y="${SIDE - FOOT + 20}" text-anchor="middle">${inFive(tick)}</text>`,
)}
<text x="${px(x(0.5))}" y="${SIDE - 3}" text-anchor="middle">said</text>
<text x="${LEFT - 4}" y="14" text-anchor="end">came</text>
<path class="left" d="M${px(x(0))},${px(y(0))}L${px(x(1))},${px(y(1))}"/>
${bins.map(
  ({ said, came }) =>
    html`<path class="planned" d="M${px(x(said))},${px(y(came.low))}V${px(y(came.high))}"/><circle class="held" cx="${px(x(said))}" cy="${px(y(came.hits / came.count))}" r="5"/>`,
)}
</svg>`;
}
