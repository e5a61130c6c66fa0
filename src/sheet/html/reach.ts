import { REACH_HEADING, REACH_WORDS, type ReachMarket, type ReachTable } from "../reachTable.ts";
import { type Html, html } from "./tag.ts";

/** What a market finds, in few words. Paper that is short of room tells only of the days planned, and only what covers bring. */
function brief({ name, planned, asItIs, withCovers }: ReachMarket): Html {
  const kind = [!planned && "ahead", withCovers === null && "uncovered"].filter((each) => each !== false);
  return html`<li class="${kind.join(" ")}"><b>${name}:</b> ${asItIs !== null && html`<span class="uncovered">${asItIs}${withCovers === null ? "" : "; "}</span>`}${withCovers ?? (asItIs === null && "none")}.</li> `;
}

/** A table on screens; on paper what each market finds. */
export function reachPart({ markets, rows }: ReachTable): Html | null {
  if (rows.length === 0 || markets.length === 0) return null;
  const covered = markets.some(({ planned, withCovers }) => planned && withCovers !== null);
  return html`<section class="${covered ? "reach" : "reach uncovered"}" aria-labelledby="reach">
<h2 id="reach">${REACH_HEADING}</h2>
<p class="key screen">${REACH_WORDS}</p>
<table class="stack screen">
<thead><tr><th scope="col">Succession</th><th scope="col">Earliest … latest</th>${markets.map(({ name }) => html`<th scope="col">${name}</th>`)}</tr></thead>
<tbody>${rows.map(
    ({ who, dates, words }) =>
      html`<tr><th scope="row">${who}</th><td data-label="salad size">${dates}</td>${words.map(
        (word, m) => html`<td data-label="${markets[m]!.name}">${word}</td>`,
      )}</tr>`,
  )}</tbody>
</table>
<ul class="said paper">${markets.map(brief)}</ul>
</section>`;
}
