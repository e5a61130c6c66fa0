import type { PickBlock, PickRow } from "../picks.ts";
import { type Html, html } from "./tag.ts";

const cell = (label: string, text: string | null): Html =>
  text === null ? html`<td class="none"></td>` : html`<td data-label="${label}">${text}</td>`;

const products = ({ products }: PickBlock): Html | null =>
  products.length === 0
    ? null
    : html`<ul class="products">${products.map(
        ({ name, expected, ordered, short }) =>
          html`<li><b>${name}</b> ${expected ?? html`<b>none</b>`}${ordered !== null && html` of ${ordered}<span class="screen"> ordered</span>`}${expected !== null && short !== null && html`, <b>${short} short</b>`}</li> `,
      )}</ul>`;

const row = ({ who, tunnel, size, odds, weight, special, cut, todo }: PickRow): Html =>
  html`<tr><th scope="row">${who}, ${tunnel}</th>${cell("size", size)}${cell("odds", odds)}${cell("weight", weight)}<td class="when-cut"><span class="paper">${cut ?? ""}</span><span class="screen">${special ? todo : (cut ?? "")}</span></td></tr>`;

function pick(block: PickBlock): Html {
  const { heading, rows, products: sold } = block;
  // On paper what is cut stands with its walk, so that a pick without orders has nothing to add.
  const only = rows.length > 0 && sold.length === 0;
  return html`<section class="${only ? "pick screen" : "pick"}">
<h3>${heading}${rows.length === 0 && html` <span class="min">nothing is picked</span>`}</h3>
${products(block)}
${
  rows.length > 0 &&
  html`<table class="stack rows">
<thead><tr><th scope="col">Succession</th><th scope="col">Size</th><th scope="col">Odds</th><th scope="col">Weight</th><th scope="col">Cut</th></tr></thead>
<tbody>${rows.map(row)}</tbody>
</table>`
}
</section>`;
}

export const picksPart = (
  picks: readonly PickBlock[],
): Html => html`<section class="picks" aria-labelledby="picks">
<h2 id="picks">Picks</h2>
${picks.length === 0 ? html`<p>No pick in the days planned.</p>` : picks.map(pick)}
</section>`;

/** Size and odds of what is cut, as they follow its name; by succession. */
export const figuresOf = (picks: readonly PickBlock[]): ReadonlyMap<string, string> =>
  new Map(
    picks.flatMap(({ rows }) =>
      rows.map(({ succession, size, odds }): [string, string] => [
        succession,
        `${size === null ? "" : `, ${size}`}${odds === null ? "" : `, odds ${odds}`}`,
      ]),
    ),
  );
