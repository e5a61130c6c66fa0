import type { Score } from "../score.ts";
import { type BedScored, type Rows, type ScoreSheet, scoreTold } from "../scoreTold.ts";
import { dayAxis, dayPicture, dayScale } from "./dayPicture.ts";
import { oddsChart } from "./oddsChart.ts";
import { shell } from "./shell.ts";
import { type Html, html, type Value } from "./tag.ts";

/** What only this page has. A dot that is filled or open says inside or outside without colour. */
const STYLE: Html = html`<style>
.verdict { margin-top: 12px; border: 2px solid var(--ink); padding: 8px 12px; }
.verdict p + p { margin-top: 4px; }
svg .held, svg .missed { stroke: var(--ink); stroke-width: 2; fill: var(--ink); }
svg .missed { fill: var(--paper); }
.days-off { max-width: 320px; }
.odds { max-width: 300px; margin-top: 8px; }
.beds td:nth-child(3) { width: 34%; }
@media screen and (max-width: 699px) { .beds td:nth-child(3) { width: auto; } .beds tfoot { display: none; } }
</style>`;

const part = (id: string, heading: string, ...content: readonly Value[]): Html | null =>
  content.every((each) => each === null || (Array.isArray(each) && each.length === 0))
    ? null
    : html`<section aria-labelledby="${id}">
<h2 id="${id}">${heading}</h2>
${content}
</section>`;

const said = (sentences: readonly string[]): Html | null =>
  sentences.length === 0
    ? null
    : html`<ul class="said">${sentences.map((sentence) => html`<li>${sentence}</li> `)}</ul>`;

const cell = (label: string, text: string): Html =>
  text === "" ? html`<td class="none"></td>` : html`<td data-label="${label}">${text}</td>`;

const table = (told: Rows | null): Html | null =>
  told === null
    ? null
    : html`<table class="stack">
<thead><tr>${told.head.map((each) => html`<th scope="col">${each}</th>`)}</tr></thead>
<tbody>${told.rows.map(
        ([first = "", ...rest]) =>
          html`<tr><th scope="row">${first}</th>${rest.map((text, i) => cell(told.head[i + 1]!, text))}</tr>`,
      )}</tbody>
</table>`;

function bedsTable(beds: readonly BedScored[]): Html | null {
  if (beds.length === 0) return null;
  const x = dayScale(beds);
  return html`<p class="key">Upright line: the day said; bar: four of five cases; dot: the day it was, filled inside the bar, open outside it.</p>
<table class="stack beds">
<thead><tr><th scope="col">Bed</th><th scope="col">Said</th><th scope="col">Days from the day said</th><th scope="col">Was</th><th scope="col">Off</th><th scope="col">Inside</th></tr></thead>
<tbody>${beds.map(
    (bed, i) =>
      html`<tr><th scope="row">${bed.who}</th>${cell("Said", `${bed.said} (${bed.range})`)}<td>${dayPicture(bed, x, `bed-${i}`)}</td>${cell("Was", bed.was)}${cell("Off", bed.off)}${cell("Inside", bed.inside)}</tr>`,
  )}</tbody>
<tfoot><tr><td></td><td></td><td>${dayAxis(x)}</td><td></td><td></td><td></td></tr></tfoot>
</table>`;
}

const oddsPart = (told: ScoreSheet, score: Score): Html | null => {
  const chart = oddsChart(score.reliability);
  return chart === null
    ? null
    : html`${said(told.odds)}
<p class="key">Dot: how often it was salad size; upright line: what so few leave open; on the dashed line said and come agree.</p>
${chart}`;
};

/** How earlier sheets did as one page that needs nothing else. */
export function scoreHtml(score: Score): string {
  const told = scoreTold(score);
  const conclusion = [...told.verdict, ...told.next];
  const body = html`<main>
<header>
<h1>${told.title}</h1>
<p class="made">${told.made}</p>
${conclusion.length > 0 && html`<div class="verdict">${conclusion.map((sentence, i) => html`<p>${i === 0 ? html`<b>${sentence}</b>` : sentence}</p>`)}</div>`}
</header>
${part("crops", "Dates, sizes and weights", table(told.crops))}
${part("beds", "Salad size, bed by bed", bedsTable(told.beds))}
${part("odds", "Odds of salad size", oddsPart(told, score))}
${part("ranges", "Ranges", said(told.ahead))}
${part("days", "Other days", said(told.days))}
${part("picks", "Picks", table(told.picks))}
${part("forecasts", "Forecasts", table(told.forecasts))}
</main>
<footer>
${part("needs-you", "Needs you", said(told.needsYou))}
${part("reading", "How to read it", said(told.reading))}
</footer>`;
  return shell(told.title, "score", STYLE, body);
}
