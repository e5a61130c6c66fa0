import { type Sheet, tildes } from "../sheet.ts";
import { LATER } from "../urgent.ts";
import { type Html, html, type Value } from "./tag.ts";

const SIZES = "Sizes are the longest leaf, odds those of salad size. Minutes are estimates for one person.";

/** A heading and its sentences. @param more - Those that paper has no room for. */
const part = (
  id: string,
  heading: string,
  sentences: readonly Value[],
  more: readonly string[] = [],
): Html | null =>
  sentences.length === 0
    ? null
    : html`<section aria-labelledby="${id}">
<h2 id="${id}">${heading}</h2>
<ul class="said">${sentences.map((sentence) => html`<li>${sentence}</li> `)}${more.map((sentence) => html`<li class="screen">${sentence}</li> `)}</ul>
</section>`;

/** What to keep in mind, what the sheet was made from, how to read it, and the usual cautions. */
export const footPart = ({
  urgent,
  limits,
  whatIf,
  needsYou,
  madeFrom,
  found,
  beds,
  grid,
  cautions,
}: Sheet): Html => html`<div class="columns foot">
${part("needs-you", "Needs you", needsYou)}
${part("limits", "Limits the plan cannot keep", limits)}
${part("what-if", "What one more would be worth", whatIf)}
${part(
  "eye",
  "Keep an eye on",
  urgent.filter(({ kind }) => LATER.includes(kind)).map(({ heading }) => heading),
)}
${part("made-from", "Made from", madeFrom, found)}
${part("marks", "How to read it", [...tildes(beds, grid.days), html`<span class="sizes">${SIZES}</span>`])}
${part("cautions", "Cautions", cautions)}
</div>`;
