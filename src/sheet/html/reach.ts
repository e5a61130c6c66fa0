import { REACH_HEADING, REACH_WORDS, type ReachMarket, type ReachTable } from "../reachTable.ts";
import { type Html, html } from "./tag.ts";

/** What a market finds, in few words. */
function brief({ name, asItIs, withCovers }: ReachMarket): Html {
  const found = [asItIs, withCovers].filter((each) => each !== null);
  return html`<li><b>${name}:</b> ${found.length === 0 ? "none" : found.join("; ")}.</li> `;
}

/** A table on screens; on paper that has room what each market finds. */
export function reachPart({ markets, rows }: ReachTable): Html | null {
  if (rows.length === 0 || markets.length === 0) return null;
  return html`<section class="reach" aria-labelledby="reach">
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
