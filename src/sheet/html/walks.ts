import { groupBy } from "../../quantity/index.ts";
import type { Cut } from "../cuts.ts";
import type { Task, WalkBlock } from "../walks.ts";
import { whole } from "../why.ts";
import { type Html, html } from "./tag.ts";
import type { Whys } from "./whys.ts";

const tick = (id: string, words: Html, about: string): Html =>
  html`<label class="tick"><input type="checkbox" id="${id}" aria-describedby="${about}"> <span>${words}</span></label>`;

/** One line for the tunnels at which the same is done with the same cloth, each with its own box. */
function group(same: readonly Task[], id: string, whys: Whys): Html {
  const { short, use, minutes } = same[0]!;
  const letters = [
    ...new Set(
      same.flatMap(({ reason }) => (reason === null ? [] : (whys.get(whole(reason).told)?.letter ?? []))),
    ),
  ];
  const each = same.length === 1 || minutes === null ? minutes : `${minutes} each`;
  const steps = short.join(" ");
  return html`<li><span class="boxes">${same.map(({ name }, i) => tick(`${id}-${i}`, html`<b>${name}</b>`, id))}</span>
<span id="${id}">${use.length === 0 ? steps : html`${steps.replace(/\.$/u, "")} <span class="use">(${use.join(", ")}).</span>`}${each !== null && html` <span class="min">${each}</span>`}</span>${letters.map((letter) => html` <a class="why" href="#why-${letter}" aria-label="${letter}: why">${letter}</a>`)}</li>`;
}

/** Size and odds of what is cut, by succession. */
export type Figures = ReadonlyMap<string, string>;

/** What is cut alike for the same day, each with its own box. */
const cutGroup = (same: readonly Cut[], id: string, figures: Figures): Html =>
  html`<li><span id="${id}">${same[0]!.how}:</span> <span class="boxes">${same.map(({ succession, what }, i) => tick(`${id}-${i}`, html`${what}${figures.get(succession) ?? null}`, id))}</span></li>`;

function walk(
  { walk, heading, minutes, carryShort, notes, cuts, tasks }: WalkBlock,
  whys: Whys,
  figures: Figures,
): Html {
  const id = `walk-${walk}`;
  const groups = groupBy(tasks, ({ short, use, minutes }) => [...short, ...use, minutes].join("\n"));
  return html`<section class="walk" aria-labelledby="${id}">
<h3 id="${id}">${heading} <span class="min">${minutes !== null ? `about ${minutes}` : cuts.length + tasks.length === 0 && "nothing to do"}</span></h3>
${notes.map((note) => html`<p class="note"><b>!</b> ${note}</p>`)}
${carryShort.length > 0 && html`<p class="carry"><b>Carry</b> ${carryShort.join("; ")}</p>`}
${
  cuts.length + tasks.length > 0 &&
  html`<ul class="tasks">
${[...groupBy(cuts, ({ how }) => how).values()].map((same, i) => cutGroup(same, `cut-${walk}-${i}`, figures))}
${[...groups.values()].map((same, i) => group(same, `do-${walk}-${i}`, whys))}
</ul>`
}
</section>`;
}

/** A heading and the walks under it. */
export const walksPart = (
  id: string,
  heading: string,
  walks: readonly WalkBlock[],
  empty: string,
  whys: Whys,
  figures: Figures,
): Html => html`<section class="walks" aria-labelledby="${id}">
<h2 id="${id}">${heading}</h2>
${walks.length === 0 ? html`<p>${empty}</p>` : html`<div class="round">${walks.map((each) => walk(each, whys, figures))}</div>`}
</section>`;
