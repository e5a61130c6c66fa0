import { FROST_COLUMNS } from "../sheet.ts";
import { LATER } from "../urgent.ts";
import type { Urgent } from "../warned.ts";
import { type Html, html } from "./tag.ts";

const SEVERITY: Readonly<Record<Urgent["severity"], string>> = { danger: "Danger", care: "Care" };

const first = (urgents: readonly Urgent[]): readonly Urgent[] =>
  urgents.filter(({ kind }) => !LATER.includes(kind));

const said = ({ inShort, follows }: Pick<Urgent, "inShort" | "follows">): string =>
  [inShort, ...follows].filter((each) => each !== null).join(" ");

/** One line each, before all else. */
export const briefs = (urgents: readonly Urgent[], quiet: string | null): Html => {
  const told = first(urgents);
  return told.length === 0
    ? html`${quiet !== null && html`<p class="quiet">${quiet}</p>`}`
    : html`<ul class="briefs">${told.map(
        ({ severity, brief, inShort, follows }) =>
          html`<li><b class="${severity}">${SEVERITY[severity]}: ${brief}</b>${said({ inShort, follows }) !== "" && html`<span class="paper">. ${said({ inShort, follows })}</span>`}</li>`,
      )}</ul>`;
};

/** What is to be feared and what the plan leaves of it. */
export const alarms = (urgents: readonly Urgent[]): Html | null => {
  const told = first(urgents);
  return told.length === 0
    ? null
    : html`<section class="alarms" aria-labelledby="alarms">
<h2 id="alarms">Frost, heat and wind</h2>
${told.map((each) => html`<p><b>${each.heading}</b> ${said(each)}</p>`)}
</section>`;
};

/** Cells a row shares with others but for its first. */
const key = (cells: readonly string[]): string => cells.slice(1).join("\n");

/** Warnings tunnel by tunnel, those with the same figures in one row. */
export const warningTables = (urgents: readonly Urgent[]): readonly Html[] =>
  first(urgents)
    .filter(({ rows, open }) => open && rows.length > 0)
    .map(({ kind, brief, columns, rows }) => {
      const keys = [...new Set(rows.map(({ cells }) => key(cells)))];
      return html`<table class="stack">
<caption>${brief}</caption>
<thead><tr>${columns.map((column) => html`<th scope="col">${column}</th>`)}</tr></thead>
<tbody>${keys.map((each) => {
        const same = rows.filter(({ cells }) => key(cells) === each).map(({ cells }) => cells);
        return html`<tr><th scope="row">${same.map(([name]) => name ?? "").join(", ")}</th>${same[0]!
          .slice(1)
          .map((cell, i) => html`<td data-label="${columns[i + 1]!}">${cell}</td>`)}</tr>`;
      })}</tbody>
</table>
${kind === "frost" && html`<p class="key screen">${FROST_COLUMNS}</p>`}`;
    });
