import type { WalkBlock } from "../walks.ts";
import { type Html, html } from "./tag.ts";

/** Letters the reasons are known by on the sheet: a to z, then aa. */
export type Whys = ReadonlyMap<string, { readonly letter: string; readonly brief: string }>;

const letter = (index: number): string =>
  index < 26
    ? String.fromCharCode(97 + index)
    : letter(Math.floor(index / 26) - 1) + String.fromCharCode(97 + (index % 26));

/** A letter for every reason, in the order they are met. */
export function whysOf(walks: readonly WalkBlock[]): Whys {
  const whys = new Map<string, { readonly letter: string; readonly brief: string }>();
  for (const { reason, brief } of walks.flatMap(({ tasks }) => tasks))
    if (reason !== null && brief !== null && !whys.has(reason))
      whys.set(reason, { letter: letter(whys.size), brief });
  return whys;
}

export const whysPart = (whys: Whys): Html | null =>
  whys.size === 0
    ? null
    : html`<section class="whys" aria-labelledby="whys">
<h2 id="whys">Why</h2>
<ul>${[...whys].map(
        ([reason, { letter, brief }]) =>
          html`<li id="why-${letter}" tabindex="-1"><b class="letter">${letter}</b> <span class="screen">${reason}</span><span class="paper">${brief}</span></li> `,
      )}</ul>
</section>`;
