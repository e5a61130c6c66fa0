import type { MissBlock } from "../misses.ts";
import { type Html, html } from "./tag.ts";

/** Every way out on screens; on paper what the plan does. */
export const missesPart = (misses: readonly MissBlock[]): Html | null =>
  misses.length === 0
    ? null
    : html`<section class="misses" aria-labelledby="misses">
<h2 id="misses">Misses, and what to do</h2>
<ul>${misses.map(
        ({ who, tunnel, brief, covers, reach, alternatives }) =>
          html`<li><b>${who}</b><span class="screen">, ${tunnel}</span>: ${brief}. <span class="screen">${covers} ${reach}</span>${alternatives.map(
            ({ brief, sentence, beside, worth, planned }, i) =>
              html` <span class="${planned ? "way" : "way screen"}"><span class="paper">${brief}</span><span class="screen">${i > 0 && "Or: "}${[sentence, ...(worth === null ? [] : [worth]), ...beside].join(" ")}</span></span>`,
          )}</li> `,
      )}</ul>
</section>`;
