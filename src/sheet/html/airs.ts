import type { Outcome } from "../../decide/index.ts";
import type { Names } from "../names.ts";
import type { Urgent } from "../warned.ts";
import { airCharts } from "./airChart.ts";
import { warningTables } from "./alarms.ts";
import { type Html, html } from "./tag.ts";

/** Temperature at the crop, as pictures and, tunnel by tunnel, as figures. */
export function airsPart(outcome: Outcome, names: Names, urgents: readonly Urgent[]): Html | null {
  const charts = airCharts(outcome, names);
  const tables = warningTables(urgents);
  return charts.length + tables.length === 0
    ? null
    : html`<section class="airs" aria-labelledby="airs">
<h2 id="airs">Temperature at the crop</h2>
${charts.length > 0 && html`<p class="key">Solid: under the plan, its lowest below; dashed: nothing on; both at the crop in calm air.</p><div class="charts">${charts}</div>`}
${tables}
</section>`;
}
