import { scaleLinear } from "d3-scale";
import { curveLinear, line } from "d3-shape";
import type { Outcome, TunnelPlan } from "../../decide/index.ts";
import { settingKey } from "../../farm/index.ts";
import { type Celsius, groupBy, HOUR, toFahrenheit, weekday } from "../../quantity/index.ts";
import type { Names } from "../names.ts";
import { temperature } from "../words.ts";
import { midnights } from "./days.ts";
import { px } from "./px.ts";
import { type Html, html } from "./tag.ts";

/** CSS pixels, so that at print size a label is as tall as the text around it. */
const WIDTH = 226;
const HEIGHT = 74;
const LEFT = 34;
const FOOT = 17;

const INITIALS = ["S", "M", "T", "W", "T", "F", "S"] as const;

/** How near the worst a tunnel comes under the plan: by its risk of frost, then by its heat. */
function danger({ tunnel }: TunnelPlan, { warnings }: Outcome): number {
  return Math.max(
    0,
    ...warnings.map((warning) =>
      warning.kind === "frost" && warning.tunnel === tunnel.id
        ? 1000 * (1 + warning.risk)
        : warning.kind === "heat" && warning.tunnel === tunnel.id
          ? 500 + warning.planned - warning.limit
          : 0,
    ),
  );
}

/** Tunnels with the same cloth at the same times, those in most danger first. */
function alike(outcome: Outcome): readonly (readonly TunnelPlan[])[] {
  const groups = groupBy(outcome.tunnels, ({ choice, settings }) =>
    choice.map((setting) => settingKey(settings[setting]!)).join(" "),
  );
  const most = (plans: readonly TunnelPlan[]): number =>
    Math.max(...plans.map((plan) => danger(plan, outcome)));
  return [...groups.values()].sort((a, b) => most(b) - most(a));
}

const extreme = (values: readonly number[], pick: (...all: number[]) => number): Celsius =>
  pick(...values) as Celsius;

function chart(outcome: Outcome, plans: readonly TunnelPlan[], names: Names): Html {
  const { farm, air } = outcome;
  const { from, until, bare } = air!;
  const under = air!.under.get(plans[0]!.tunnel.id)!;
  const shown = (value: Celsius): number => (farm.units === "US" ? toFahrenheit(value) : value);
  const all = [...bare, ...under].map(shown);
  const freezing = shown(0 as Celsius);
  const x = scaleLinear()
    .domain([from, until])
    .range([LEFT, WIDTH - 2]);
  const y = scaleLinear()
    .domain([Math.min(freezing - 4, ...all), Math.max(...all)])
    .range([HEIGHT - FOOT, 6]);
  const at = (i: number): number => x(from + (i + 0.5) * HOUR);
  const path = (values: readonly Celsius[]): string =>
    line<Celsius>()
      .x((_, i) => at(i))
      .y((value) => y(shown(value)))
      .curve(curveLinear)
      .digits(1)([...values]) ?? "";
  const days = midnights(farm.place.zone, from, until);
  const ticks = y.ticks(3).filter((tick) => Math.abs(y(tick) - y(freezing)) > 12);
  const who = plans.map(({ tunnel }) => names.tunnel(tunnel.id)).join(", ");
  const [low, high] = [
    temperature(farm.units, extreme(under, Math.min)),
    temperature(farm.units, extreme(under, Math.max)),
  ];
  const [bareLow, bareHigh] = [
    temperature(farm.units, extreme(bare, Math.min)),
    temperature(farm.units, extreme(bare, Math.max)),
  ];
  const label = `Temperature at the crop in ${who}: ${low} to ${high} under what the plan has on, ${bareLow} to ${bareHigh} with nothing on.`;
  const edge = (i: number): number => days[i]?.at ?? until;
  return html`<figure class="air">
<svg viewBox="0 0 ${WIDTH} ${HEIGHT}" role="img" aria-label="${label}">
${ticks.map(
  (tick) =>
    html`<path class="gridline" d="M${LEFT},${px(y(tick))}H${WIDTH}"/><text x="${LEFT - 4}" y="${px(y(tick) + 4.5)}" text-anchor="end">${String(tick).replace("-", "−")}</text>`,
)}
<path class="freezing" d="M${LEFT},${px(y(freezing))}H${WIDTH}"/><text class="strong" x="${LEFT - 4}" y="${px(y(freezing) + 4.5)}" text-anchor="end">${freezing}</text>
${days.map(
  ({ at, date }, i) =>
    html`<path class="midnight" d="M${px(x(at))},${HEIGHT - FOOT}v4"/><text x="${px((x(at) + x(edge(i + 1))) / 2)}" y="${HEIGHT - 2}" text-anchor="middle">${INITIALS[weekday(date)]!}</text>`,
)}
<path class="left" d="${path(bare)}"/>
<path class="planned" d="${path(under)}"/>
</svg>
<figcaption><b>${who}</b>: <span class="screen">lowest </span>${low}</figcaption>
</figure>`;
}

/** Temperature at the crop with nothing on (dashed) and under the plan (solid), one chart for tunnels with the same plan. */
export const airCharts = (outcome: Outcome, names: Names): readonly Html[] =>
  outcome.air === null ? [] : alike(outcome).map((plans) => chart(outcome, plans, names));
