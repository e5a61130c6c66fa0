import { type Html, html } from "./tag.ts";

/**
 * Paper first: ink on white, borders and weight carry every meaning. Screens add a second set of colours and more room for
 * a thumb. No colour, font or size comes from elsewhere.
 */
export const STYLE: Html = html`<style>
:root {
  color-scheme: light dark;
  --ink: #16191a; --soft: #4c5356; --paper: #fff; --rule: #b9bfc1; --fill: #eceeed; --alarm: #9b1c10; --link: #14539a;
}
@media screen and (prefers-color-scheme: dark) {
  :root { --ink: #eceeec; --soft: #b4bbbd; --paper: #14181a; --rule: #4b5356; --fill: #272d30; --alarm: #ff9d8f; --link: #8fc1ff; }
}
*, ::before, ::after { box-sizing: border-box; }
html { -webkit-text-size-adjust: 100%; text-size-adjust: 100%; }
body {
  margin: 0 auto; padding: 0 16px 48px; max-width: 1000px;
  background: var(--paper); color: var(--ink);
  font: 1rem/1.4 system-ui, -apple-system, "Segoe UI", Roboto, "Helvetica Neue", Arial, sans-serif;
  font-variant-numeric: tabular-nums; overflow-wrap: anywhere;
}
h1, h2, h3, p, ul, figure { margin: 0; padding: 0; }
ul { list-style: none; }
h1 { font-size: 1.35rem; line-height: 1.2; padding-top: 16px; }
h2 { font-size: 1.15rem; line-height: 1.25; margin-top: 36px; padding-top: 8px; border-top: 2px solid var(--ink); }
h3 { font-size: 1rem; padding-top: 16px; }
a { color: var(--link); }
:focus-visible { outline: 3px solid var(--link); outline-offset: 2px; }
.made, .key, .min, .when, .now { color: var(--soft); }
.made a { display: inline-block; min-height: 24px; }
.hidden { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); white-space: nowrap; }
.min { font-weight: 400; white-space: nowrap; margin-left: .4em; }
h3 .min { white-space: normal; }

.briefs { margin-top: 10px; border: 2px solid var(--ink); padding: 6px 10px; }
.danger { color: var(--alarm); }
.quiet { margin-top: 10px; }
.alarms p { margin-top: 8px; }

.note { font-weight: 600; }
.carry { margin-top: 4px; padding: 4px 8px; border-left: 4px solid var(--ink); background: var(--fill); }
.tasks > li { padding: 6px 0; border-bottom: 1px solid var(--rule); }
.tick { display: inline-flex; align-items: center; gap: 12px; min-height: 44px; padding-right: 16px; cursor: pointer; }
.tick input {
  appearance: none; flex: none; width: 26px; height: 26px; margin: 0; border: 2px solid var(--ink); border-radius: 3px;
  background: var(--paper); cursor: pointer;
}
.tick input:checked { background: var(--ink); box-shadow: inset 0 0 0 4px var(--paper); }
.tick:has(:checked) span { text-decoration: line-through; }
.boxes { display: block; }
.why {
  display: inline-block; min-width: 24px; min-height: 24px; text-align: center; font-weight: 700; font-style: italic;
}
.letter { display: inline-block; min-width: 1.3em; font-style: italic; }
.whys li, .misses li, .said li { margin-top: 8px; }

table { width: 100%; border-collapse: collapse; margin-top: 8px; }
th, td { padding: 3px 6px; text-align: left; vertical-align: top; border-bottom: 1px solid var(--rule); font-weight: 400; }
th[scope="row"] { font-weight: 400; }
thead th, caption { font-weight: 600; text-align: left; }
thead { display: table-header-group; }
tr, .tasks > li, .whys li, .misses li, figure, h3 + .carry { break-inside: avoid; }
h2, h3 { break-after: avoid; break-inside: avoid; }
thead th, td[data-label], .figures td { overflow-wrap: normal; }
.todo { color: var(--soft); }
.none { padding: 0; }

.grid .name { width: 10.4%; }
.grid .half { width: 6.4%; }
.grid .bar { overflow-wrap: normal; }
.grid .bar.long { overflow-wrap: anywhere; }
.grid th, .grid td { padding: 2px 3px; }
.grid thead th, .grid thead td { border-left: 1px solid var(--rule); text-align: center; }
.grid thead th:first-child { border-left: 0; text-align: left; }
.grid .dawn { border-left: 1px solid var(--rule); }
.grid tbody th { font-weight: 600; }
.grid .bar { display: block; padding: 0 3px; }
.grid .cloth .bar { border: 1px solid var(--ink); background: var(--fill); }
.grid .open .bar { border: 1px dashed var(--rule); }
.grid .new .bar { border-left: 5px solid var(--ink); font-weight: 600; }

svg { display: block; width: 100%; height: auto; overflow: visible; }
svg path { fill: none; vector-effect: non-scaling-stroke; }
svg text { fill: var(--ink); font-size: 13.4px; }
svg .strong { font-weight: 700; }
svg .window { fill: var(--fill); stroke: var(--soft); stroke-width: .6; vector-effect: non-scaling-stroke; }
svg .axis, svg .midnight { stroke: var(--soft); stroke-width: 1; }
svg .pick { stroke: var(--ink); stroke-width: .8; }
svg .planned { stroke: var(--ink); stroke-width: 2; }
svg .left { stroke: var(--ink); stroke-width: 1.2; stroke-dasharray: 4 3; }
svg .gridline { stroke: var(--rule); stroke-width: .6; }
svg .freezing { stroke: var(--ink); stroke-width: 1; }
svg .cut { stroke: var(--ink); stroke-width: 7; stroke-linecap: round; }
.leaf { height: 56px; }
.leaf, .days { max-width: 480px; }
.days { position: relative; height: 1.3em; font-size: .8rem; color: var(--soft); overflow: hidden; }
.days span { white-space: nowrap; position: absolute; padding-left: 3px; }
.charts { display: grid; grid-template-columns: repeat(auto-fill, minmax(min(280px, 100%), 1fr)); gap: 16px 24px; margin-top: 8px; }

@media screen and (min-width: 700px) {
  .round { columns: 2; column-gap: 32px; }
  .walk { break-inside: avoid; }
  .measuring th[scope="row"] { width: 32%; }
}
@media screen {
  .paper { display: none; }
  nav { display: flex; flex-wrap: wrap; gap: 4px 4px; margin: 12px -8px 0; }
  nav a { padding: 10px 8px; }
  header + section h2 { margin-top: 16px; }
  .write { display: none; }
  .now { display: block; }
  .measuring svg { margin: 4px 0; }
  [id]:target { background: var(--fill); }
}
@media screen and (max-width: 699px) {
  .stack thead, .measuring thead { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); }
  .stack, .stack tbody, .stack tr, .stack th, .stack td, .stack caption,
  .measuring table, .measuring tbody, .measuring tr, .measuring th, .measuring td { display: block; border: 0; padding: 0; }
  .measuring .write { display: none; }
  .stack tr, .measuring tr { padding: 10px 0; border-bottom: 1px solid var(--rule); }
  .stack th[scope="row"] { font-weight: 600; }
  .stack .none { display: none; }
  .stack td[data-label]::before { content: attr(data-label) ": "; color: var(--soft); }
  .stack td[data-label] { display: inline-block; margin-right: 14px; }
  .stack.grid td { border: 0; }
  .halves { display: none; }
  .grid td { display: grid; grid-template-columns: 8.5em 1fr; align-items: baseline; margin-top: 4px; }
}
@media screen and (min-width: 700px) { .grid .when { display: none; } .grid .name { width: 13.2%; } .grid .half { width: 6.2%; } }

@page { margin: 11mm; }
@media print {
  body { max-width: none; padding: 0; font-size: 10pt; line-height: 1.12; print-color-adjust: exact; -webkit-print-color-adjust: exact; }
  a, .danger { color: inherit; text-decoration: none; }
  h1 { font-size: 13pt; padding: 0; }
  h1, .made, .glance h2, .sum, .reach h2 { display: inline; }
  .glance h2, .reach h2 { border: 0; padding: 0 2mm 0 0; }
  .glance, .reach { margin-top: 1.6mm; padding-top: .6mm; border-top: .35mm solid #000; }
  .tasks .min { display: none; }
  h2 { font-size: 10.5pt; margin-top: 1.6mm; padding-top: .6mm; border-top: .35mm solid #000; }
  h3 { font-size: 10pt; padding-top: 1mm; }
  .briefs { margin-top: 1mm; padding: .4mm 2mm; border-width: .5mm; }
  .alarms p { margin-top: .4mm; }
  .screen, .key.screen, .said .screen, .grid .when, nav, .alarms, .airs table { display: none; }
  .made, .key, .min, .when, .now, .todo { color: #000; }

  .roomy .front { min-height: 99vh; line-height: 1.2; }

  .round, .columns { columns: 2; column-gap: 6mm; }
  .round > :first-child h3 { padding-top: 0; }
  .columns { margin-top: 1.4mm; padding-top: .6mm; border-top: .35mm solid #000; }
  .columns > :first-child h2 { margin-top: 0; padding-top: 0; border: 0; }
  .tasks > li { padding: .3mm 0 .3mm 6mm; text-indent: -6mm; border-bottom: .15mm solid #999; }
  .tick { display: inline-block; text-indent: 0; max-width: 100%; min-height: 0; padding-right: 1.4mm; gap: 0; }
  .tick input { display: inline-block; width: 4mm; height: 4mm; margin-right: .6mm; border: .3mm solid #000; border-radius: 0; vertical-align: -.6mm; }
  .boxes { display: inline; }
  .use { display: inline-block; text-indent: 0; }
  .why { min-width: 0; min-height: 0; display: inline; }
  .carry { margin-top: .4mm; padding: 0 0 0 2mm; border-left-width: 1mm; background: none; }
  .whys li + li::before { content: " "; }
  .said, .said li, .foot h2, .products, .products li { display: inline; }
  .since .said li { display: block; margin: 0; padding-left: 3.4mm; text-indent: -3.4mm; }
  .dense .whys li, .dense .whys .paper, .dense .misses li { display: inline; }
  .dense { letter-spacing: -.012em; line-height: 1.095; }
  .rows, .dense .misses .screen, .dense .sizes, .dense .reach { display: none; }
  .roomy .whys li, .roomy .misses li { margin-top: .5mm; padding-left: 3.4mm; text-indent: -3.4mm; }
  .letter { min-width: 0; text-indent: 0; }
  .dense h2 { margin-top: .6mm; }
  .foot section { margin-top: .5mm; }
  .foot h2 { font-size: inherit; line-height: inherit; }
  .foot h2 { border: 0; padding: 0; }
  .foot h2::after { content: "."; }
  .products li:not(:last-child)::after { content: ";"; }
  .said { margin-top: .3mm; }

  table { margin-top: .6mm; }
  th, td { padding: .2mm 1mm; border-bottom: .15mm solid #999; }
  .grid th, .grid td { padding: .35mm .4mm; }
  .dense .grid th, .dense .grid td { padding: .2mm .4mm; }
  .grid .bar { padding: 0 1mm; }
  .grid .new .bar { border-left-width: 1.2mm; }
  .thirds { columns: 3; column-gap: 4mm; }
  .measuring table { margin: 0; table-layout: fixed; }
  .measuring th, .measuring td { vertical-align: middle; padding: 0 1mm 0 0; line-height: 1.095; }
  .measuring thead th { border-bottom: 0; }
  .measuring th:first-child { width: 31mm; }
  .measuring th.write { width: 12.5mm; padding: 0 0 0 1mm; }
  .measuring td.box { height: 8.3mm; border: .3mm solid #000; padding: 0; }
  .now { display: block; }
  .leaf { height: 7.6mm; }
  .measuring h2, .airs h2 { display: inline; border: 0; padding: 0 2mm 0 0; }
  .measuring, .airs { margin-top: 1.6mm; padding-top: .6mm; border-top: .35mm solid #000; }
  .roomy .measuring, .airs { break-inside: avoid; }
  .measuring .key, .airs .key:not(.screen) { display: inline; }
  .charts { grid-template-columns: repeat(3, 1fr); gap: 0 4mm; margin-top: 0; }
  .charts > :nth-child(n + 4) { display: none; }
}
</style>`;
