import type { Grid, GridCell, GridTunnel } from "../grid.ts";
import { type Html, html } from "./tag.ts";

/** Days that stand side by side on paper. */
const SIDE_BY_SIDE = 7;

/** Half-days one after the other with the same plan. */
interface Bar {
  readonly plan: string | null;
  readonly cloth: string | null;
  readonly how: string | null;
  /** Index of its first half-day in the band. */
  readonly from: number;
  readonly halves: number;
  /** Begins with something to do. */
  readonly changes: boolean;
}

function bars(cells: readonly GridCell[]): readonly Bar[] {
  const all: Bar[] = [];
  cells.forEach((cell, from) => {
    const last = all.at(-1);
    const plan = cell?.plan ?? null;
    const changes = cell?.work === "change";
    if (last !== undefined && last.plan === plan && !changes)
      all[all.length - 1] = { ...last, halves: last.halves + 1 };
    else all.push({ plan, cloth: cell?.cloth ?? null, how: cell?.how ?? null, from, halves: 1, changes });
  });
  return all;
}

/** A word too long to keep whole in half a day's width. */
const LONG = /[^\s\u00a0]{11}/u;

const PART = ["morning", "evening"] as const;

/** Where a short bar follows one of the same cloth, only how it lies now. */
const words = ({ plan, cloth, how, halves }: Bar, before: Bar | undefined): string =>
  how !== null && halves <= 2 && before?.cloth === cloth ? how : (plan ?? "");

function row({ name, rows }: GridTunnel, days: Grid["days"], from: number): Html {
  const halves = days.flatMap((_, i) => rows.map(({ cells }) => cells[from + i] ?? null));
  return html`<tr><th scope="row">${name}</th>${bars(halves).map((bar, i, all) => {
    const { plan, from: start, changes } = bar;
    if (plan === null) return html`<td class="none" colspan="${bar.halves}"></td>`;
    const told = words(bar, all[i - 1]);
    const kind = [bar.cloth === "" ? "open" : "cloth", changes && "new", start % 2 === 0 && "dawn"];
    return html`<td colspan="${bar.halves}" class="${kind.filter((each) => each !== false).join(" ")}"><span class="when">${changes ? `${days[Math.floor(start / 2)]!.label}, ${PART[start % 2]!}` : from === 0 ? "now" : days[0]!.label}</span><span class="bar${LONG.test(told) ? " long" : ""}">${told}</span></td>`;
  })}</tr>`;
}

function band(grid: Grid, tunnels: readonly GridTunnel[], from: number): Html {
  const days = grid.days.slice(from, from + SIDE_BY_SIDE);
  return html`<table class="grid stack">
<caption class="hidden">What lies on each tunnel, by day and by night</caption>
<colgroup><col class="name">${days.flatMap(() => [html`<col class="half">`, html`<col class="half">`])}</colgroup>
<thead>
<tr><th scope="col">Tunnel</th>${days.map(({ label }) => html`<th scope="colgroup" colspan="2">${label}</th>`)}</tr>
<tr class="outside"><th scope="row">out ${grid.unit}</th>${days.map(({ outside }) => html`<td colspan="2">${outside ?? ""}</td>`)}</tr>
</thead>
<tbody>${tunnels.map((tunnel) => row(tunnel, days, from))}</tbody>
</table>`;
}

/** The tunnels by morning and evening. */
export function gridPart(grid: Grid, summary: readonly string[]): Html {
  const busy = grid.tunnels.filter(({ idle }) => !idle);
  const idle = grid.tunnels.filter((tunnel) => tunnel.idle);
  const starts = grid.days.map((_, i) => i).filter((i) => i % SIDE_BY_SIDE === 0);
  return html`<section class="glance" aria-labelledby="glance">
<h2 id="glance">The days at a glance</h2>
<p class="sum">${summary[0] ?? ""}<span class="screen"> ${summary.slice(1).join(" ")}</span></p>
${busy.length > 0 && starts.map((from) => band(grid, busy, from))}
<p class="key">${idle.length > 0 && `Leave as it is all these days: ${idle.map(({ name, now }) => `${name} (${now})`).join(", ")}. `}${busy.length > 0 && html`<span class="halves">Halves of a day: from the morning, from the evening walk. Thick edge: a change.</span>`}</p>
</section>`;
}
