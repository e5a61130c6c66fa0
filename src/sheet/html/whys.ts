import { groupBy } from "../../quantity/index.ts";
import type { WalkBlock } from "../walks.ts";
import { type Why, whole } from "../why.ts";
import { type Html, html } from "./tag.ts";

interface Lettered {
  readonly letter: string;
  readonly why: Why;
}

/** Letters the reasons are known by on the sheet, by their sentences: a to z, then aa. */
export type Whys = ReadonlyMap<string, Lettered>;

const letter = (index: number): string =>
  index < 26
    ? String.fromCharCode(97 + index)
    : letter(Math.floor(index / 26) - 1) + String.fromCharCode(97 + (index % 26));

/** A letter for every reason, in the order they are met. */
export function whysOf(walks: readonly WalkBlock[]): Whys {
  const whys = new Map<string, Lettered>();
  for (const why of walks.flatMap(({ tasks }) => tasks.flatMap(({ reason }) => reason ?? []))) {
    const { told } = whole(why);
    if (!whys.has(told)) whys.set(told, { letter: letter(whys.size), why });
  }
  return whys;
}

const onScreen = ({ letter, why }: Lettered): Html =>
  html`<li id="why-${letter}" tabindex="-1"><b class="letter">${letter}</b> ${whole(why).told}</li> `;

/** Reasons with the same cause: the cause once, then each by its letter. */
const onPaper = (same: readonly Lettered[]): Html =>
  html`<li>${same[0]!.why.cause.brief}${same.map(({ letter, why }) => html` <b class="letter">${letter}</b> ${why.own.brief}`)}</li> `;

export function whysPart(whys: Whys): Html | null {
  if (whys.size === 0) return null;
  const all = [...whys.values()];
  const causes = groupBy(all, ({ why, letter }) => why.cause.brief || letter);
  return html`<section class="whys" aria-labelledby="whys">
<h2 id="whys">Why</h2>
<ul class="screen">${all.map(onScreen)}</ul>
<ul class="paper">${[...causes.values()].map(onPaper)}</ul>
</section>`;
}
