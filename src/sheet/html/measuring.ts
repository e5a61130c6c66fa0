import type { Outcome } from "../../decide/index.ts";
import type { BedGroup, BedRow } from "../bedsTable.ts";
import type { Strip } from "../strip.ts";
import { leafChart } from "./leafChart.ts";
import { type Html, html } from "./tag.ts";

function row(bed: BedRow, outcome: Outcome): Html {
  const outlook = outcome.successions.find(({ succession }) => succession.id === bed.succession)!;
  return html`<tr>
<th scope="row"><b>${bed.who}</b> <span class="now">${bed.tunnel}, ${bed.now.middle}</span></th>
<td>${leafChart(outcome, outlook, bed)}<p class="screen">${bed.sentences.slice(1).join(" ")}</p></td>
<td class="write box"></td>
</tr>`;
}

/** Where every succession stands, with a box for the leaf that is measured. In the order of the walk. */
export function measuringPart(groups: readonly BedGroup[], strip: Strip | null, outcome: Outcome): Html {
  const order = new Map(outcome.successions.map(({ succession }, i) => [succession.id, i]));
  const rows = groups
    .flatMap(({ rows }) => rows.filter(({ finished }) => !finished))
    .sort((a, b) => order.get(a.succession)! - order.get(b.succession)!);
  const unit = outcome.farm.units === "US" ? "in" : "cm";
  return html`<section class="measuring" aria-labelledby="measuring">
<h2 id="measuring">Every succession</h2>
<p class="key">Solid: plan; dashed: left as it is; band: salad size; upright: pick; dot: cut.<span class="paper"> Box: longest leaf, middle of five.</span></p>
<div class="thirds"><table>
<thead><tr><th scope="col">Succession, now</th><th scope="col">Leaf</th><th scope="col" class="write">${unit}</th></tr></thead>
<tbody>${rows.map((bed) => row(bed, outcome))}</tbody>
</table></div>
${strip !== null && html`<p>${strip.asked}<span class="screen"> ${strip.why}</span></p>`}
</section>`;
}
