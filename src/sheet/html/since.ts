import type { SinceBlock } from "../since.ts";
import { type Html, html } from "./tag.ts";

/** What is new against the sheet given out before, and what of it is not noted. */
export const sincePart = (since: SinceBlock | null): Html | null =>
  since === null
    ? null
    : html`
<section class="since" aria-labelledby="since">
<h2 id="since">${since.heading}</h2>
<ul class="said">${[...since.unnoted, ...since.changed].map((each) => html`<li>${each}</li> `)}</ul>
</section>`;
