import type { Outcome } from "../../decide/index.ts";
import { namesOf } from "../names.ts";
import { type Sheet, sheetOf } from "../sheet.ts";
import { airsPart } from "./airs.ts";
import { alarms, briefs } from "./alarms.ts";
import { footPart } from "./foot.ts";
import { gridPart } from "./grid.ts";
import { measuringPart } from "./measuring.ts";
import { missesPart } from "./misses.ts";
import { figuresOf, picksPart } from "./picks.ts";
import { reachPart } from "./reach.ts";
import { shell } from "./shell.ts";
import { sincePart } from "./since.ts";
import { html } from "./tag.ts";
import { walksPart } from "./walks.ts";
import { type Whys, whysOf, whysPart } from "./whys.ts";

/** Lines, roughly, up to which two sides of paper have room for lists; beyond it, misses and reasons run on. judgement */
const ROOM = 75;

const load = ({ tunnels, successions }: Outcome, { misses, needsYou, since }: Sheet, whys: Whys): number =>
  tunnels.length +
  successions.length +
  tunnels.flatMap(({ changes }) => changes).length +
  2 * misses.length +
  whys.size +
  2 * ((since?.changed.length ?? 0) + (since?.unnoted.length ?? 0)) +
  3 * needsYou.length;

/** The week's sheet as one page that needs nothing else, for paper and phone. */
export function weekHtml(outcome: Outcome): string {
  const sheet = sheetOf(outcome);
  const names = namesOf(outcome.farm, outcome.successions);
  const whys = whysOf(sheet.walks);
  const [today, later] = [
    sheet.walks.filter(({ first }) => first),
    sheet.walks.filter(({ first }) => !first),
  ];
  const figures = figuresOf(sheet.picks);
  const body = html`<main>
<div class="front">
<header>
<h1>${sheet.title}</h1>
 <p class="made">${sheet.made}${sheet.needsYou.length > 0 && html` <a href="#needs-you">${sheet.needsYou.length === 1 ? "One thing needs you." : `${sheet.needsYou.length} things need you.`}</a>`}</p>
${briefs(sheet.urgent, sheet.quiet)}
<nav aria-label="On this page">${[
    ["today", "Today"],
    ["glance", "Days"],
    ["later", "Walks"],
    ["picks", "Picks"],
    ["measuring", "Leaves"],
  ].map(([id, word]) => html`<a href="#${id!}">${word!}</a> `)}</nav>
</header>${sincePart(sheet.since)}
${walksPart("today", sheet.startsToday ? "Today" : "Next walks", today, "No walk falls into the days planned.", whys, figures)}
${alarms(sheet.urgent)}
${gridPart(sheet.grid, sheet.summary)}
${walksPart("later", "Walk by walk", later, "Nothing to do after the first day.", whys, figures)}
${reachPart(sheet.reach)}
</div>
<div class="columns">
${picksPart(sheet.picks)}
${missesPart(sheet.misses)}
${whysPart(whys)}
</div>
${measuringPart(sheet.beds, sheet.strip, outcome)}
${airsPart(outcome, names, sheet.urgent)}
</main>
<footer>
${footPart(sheet)}
</footer>`;
  return shell(sheet.title, load(outcome, sheet, whys) > ROOM ? "dense" : "roomy", null, body);
}
