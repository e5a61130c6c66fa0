import type { Outcome } from "../decide/index.ts";
import type { BedGroup, BedRow } from "./bedsTable.ts";
import { type Grid, type GridCell, type GridTunnel, hasRounds } from "./grid.ts";
import { filled, over, section, sized } from "./layout.ts";
import type { MissBlock } from "./misses.ts";
import { COLUMNS, type Page, page, type TextOptions } from "./page.ts";
import type { PickBlock } from "./picks.ts";
import { reachText } from "./reachText.ts";
import { type Sheet, sheetOf } from "./sheet.ts";
import { LATER } from "./urgent.ts";
import type { Task, WalkBlock } from "./walks.ts";
import type { Urgent } from "./warned.ts";
import { type Why, whole } from "./why.ts";

const SEVERITY: Readonly<Record<Urgent["severity"], string>> = { danger: "DANGER: ", care: "CARE: " };

function urgent(
  out: Page,
  { severity, heading, columns, rows, open, inShort, follows }: Urgent,
  full: boolean,
): void {
  if (severity === "danger" || rows.length > 0) out.gap();
  out.say(SEVERITY[severity] + heading, { tone: severity === "danger" ? "danger" : "bold" });
  if (!full || !open) {
    if (inShort !== null) out.say(inShort, { indent: 2 });
    for (const sentence of follows) out.say(sentence, { indent: 2 });
    return;
  }
  if (out.width >= COLUMNS) {
    const all = [columns, ...rows.map(({ cells }) => cells)];
    const figures = columns.slice(2).map((): readonly [number, number] => [6, 8]);
    out.table(all, filled(out, all, [[6, 14], [8, 60], ...figures], 1, 2), { indent: 2, headed: true });
  } else for (const { sentence } of rows) out.say(sentence, { mark: "- " });
  for (const sentence of follows) out.say(sentence, { indent: 2 });
}

/** Of several nights of frost, or hot days, the most urgent is told tunnel by tunnel, the others in few words. */
function urgents(out: Page, all: readonly Urgent[]): void {
  const seen = new Set<Urgent["kind"]>();
  for (const each of all.filter(({ kind }) => !LATER.includes(kind))) {
    urgent(out, each, !seen.has(each.kind));
    if (each.open) seen.add(each.kind);
  }
}

/** What may be told once for tasks one after the other: the cause, else the whole reason. */
const sharedOf = ({ cause, own }: Why): string => cause.told || own.told;

/** Tasks one after the other that share it. */
function runs(tasks: readonly Task[]): (readonly [shared: string, run: Task[]])[] {
  const all: (readonly [string, Task[]])[] = [];
  for (const task of tasks) {
    const shared = task.reason === null ? "" : sharedOf(task.reason);
    const last = all.at(-1);
    if (last?.[0] === shared) last[1].push(task);
    else all.push([shared, [task]]);
  }
  return all;
}

function walk(out: Page, { heading, minutes, carry, notes, cuts, tasks, rounds }: WalkBlock): void {
  out.gap();
  out.say(minutes === null ? heading : `${heading}: about ${minutes}`, { tone: "bold" });
  for (const { sentence } of cuts) out.say(sentence, { mark: "[ ] " });
  for (const note of notes) out.say(note, { mark: "! " });
  carry.forEach((cloth, i) => {
    out.say(cloth, { mark: i === 0 ? "Carry " : "      " });
  });
  if (tasks.length === 0 && cuts.length === 0) out.say("Nothing to do.");
  const todo = (where: string, actions: readonly string[], minutes: string | null): void =>
    out.say(`${where}: ${actions.join(" ")}${minutes === null ? "" : ` (${minutes})`}`, { mark: "[ ] " });
  for (const [shared, run] of runs(tasks.filter(({ kind }) => kind === "change"))) {
    const once = run.length > 1 && shared !== "";
    if (once) out.say(shared, { mark: `Why, the next ${run.length}: ` });
    for (const { name, actions, minutes, reason } of run) {
      todo(name, actions, minutes);
      if (reason === null) continue;
      if (!once) out.say(whole(reason).told, { mark: "Why: ", indent: 4 });
      else if (reason.own.told !== shared) out.say(reason.own.told, { indent: 4 });
    }
  }
  for (const { names, actions, minutes } of rounds) todo(names, actions, minutes);
}

/** Days to each band of the grid, shared evenly so that no band is nearly empty. */
function bands(days: number, room: number, least: number): { size: number; width: number } {
  const most = Math.max(1, Math.floor((room + 1) / (least + 1)));
  const size = Math.ceil(days / Math.ceil(days / most));
  return { size, width: Math.min(20, Math.floor((room + 1) / size) - 1) };
}

const cellText = (cell: GridCell): string =>
  cell === null ? "" : cell.work === "change" ? cell.lies : cell.work === "none" ? "." : cell.round;

function gridBand(out: Page, grid: Grid, from: number, size: number, label: number, width: number): void {
  const days = grid.days.slice(from, from + size);
  const widths = [label, ...days.map(() => width)];
  out.table([["", ...days.map((day) => day.label)]], widths, { headed: true });
  if (days.some(({ outside }) => outside !== null))
    out.table([[`out ${grid.unit}`, ...days.map(({ outside }) => outside ?? "")]], widths);
  const works = ({ rows }: GridTunnel): boolean =>
    rows.some(({ cells }) =>
      cells.slice(from, from + size).some((cell) => cell !== null && cell.work !== "none"),
    );
  for (const tunnel of grid.tunnels.filter((each) => !each.idle && works(each))) {
    out.say(from === 0 ? `${tunnel.name}, now ${tunnel.now}` : tunnel.name);
    for (const { part, cells } of tunnel.rows) {
      const shown = cells.slice(from, from + size);
      if (shown.some((cell) => cell !== null && cell.work !== "none"))
        out.table([[` ${part}`, ...shown.map(cellText)]], widths);
    }
  }
}

function grid(out: Page, table: Grid): void {
  const label = 8;
  const { size, width } = bands(table.days.length, out.width - label - 1, 9);
  for (let from = 0; from < table.days.length; from += size) {
    out.gap();
    gridBand(out, table, from, size, label, width);
  }
  out.gap();
  for (const { name, now } of table.tunnels.filter(({ idle }) => idle))
    out.say(`${name}: leave it as it is all these days (${now}).`);
  if (table.tunnels.some(({ idle }) => !idle))
    out.say(
      `Words say what lies on the tunnel after that walk; a dot: leave it as it is${hasRounds(table) ? "; on, off: the daily round" : ""}.`,
    );
}

function pick(out: Page, { heading, products, rows }: PickBlock): void {
  out.gap();
  out.say(heading, { tone: "bold" });
  for (const { sentence } of products) out.say(sentence, { indent: 2 });
  if (rows.length === 0) out.say("Nothing is picked then.", { indent: 2 });
  else if (out.width < COLUMNS) for (const { sentence } of rows) out.say(sentence, { mark: "[ ] " });
  else {
    const cells = rows.map((row) => [
      "[ ]",
      row.who,
      row.tunnel,
      row.size === null ? "" : over(row.size, row.range),
      row.odds === null ? "" : row.odds,
      row.weight ?? "",
      row.special ? row.todoShort : "",
    ]);
    const all = [["", "Succession", "Tunnel", "Size", "Odds", "Weight", ""], ...cells];
    const widths = filled(
      out,
      all,
      [
        [3, 3],
        [10, 22],
        [6, 14],
        [4, 9],
        [4, 8],
        [6, 9],
        [0, 60],
      ],
      6,
    );
    out.table(all, widths, { headed: true });
  }
}

function beds(out: Page, { heading, date, rows }: BedGroup): void {
  out.gap();
  out.say(heading, { tone: "bold" });
  if (out.width < COLUMNS) {
    for (const { sentences } of rows) {
      out.say(sentences[0] ?? "");
      for (const sentence of sentences.slice(1)) out.say(sentence, { indent: 2 });
    }
    return;
  }
  const wide = out.width >= 110;
  const who = [10, wide ? 30 : 17] as const;
  const now = [4, wide ? 14 : 9] as const;
  const name = (row: BedRow): string => `${row.who}\n${row.tunnel}, ${row.window}`;
  const reach = ({ reach: { told, range } }: BedRow): string =>
    over(told.replace(" … ", "\n… "), told === "later" ? null : range.planned);
  if (date === null) {
    const all = [
      ["Succession", "Now", "Salad size with covers", "What to do"],
      ...rows.map((row) => [name(row), sized(row.now), reach(row), row.todoShort]),
    ];
    out.table(all, filled(out, all, [who, [4, 20], [11, 16], [12, 60]], 3), { headed: true });
    return;
  }
  const all = [
    ["Succession", "Now", "Left as it is", "With the plan", "Odds", "Salad size with covers", "What to do"],
    ...rows.map((row) => [
      name(row),
      sized(row.now),
      row.pick === null ? "" : sized(row.pick.unchanged),
      row.pick === null ? "" : sized(row.pick.planned),
      row.pick === null ? "" : row.pick.odds,
      reach(row),
      row.todoShort,
    ]),
  ];
  const widths = filled(out, all, [who, now, [7, 9], [7, 9], [4, 8], [10, 14], [12, 60]], 6);
  out.table(all, widths, { headed: true });
}

/** A miss and the ways out, counted where there are several. */
function miss(out: Page, { sentence, covers, reach, alternatives }: MissBlock): void {
  out.say(`${sentence} ${covers} ${reach}`, { mark: "- " });
  alternatives.forEach(({ sentence, beside, worth }, i) => {
    const mark = alternatives.length === 1 ? "" : `${i + 1}. `;
    out.say([sentence, ...(worth === null ? [] : [worth]), ...beside].join(" "), { mark, indent: 2 });
  });
}

/** Where those successions stand that neither a pick nor a miss tells of. */
function untold({ beds, picks, misses }: Sheet): readonly BedGroup[] {
  const told = new Set([...picks.flatMap(({ rows }) => rows), ...misses].map(({ succession }) => succession));
  return beds
    .map((group) => ({
      ...group,
      rows: group.rows.filter(({ succession, finished }) => !finished && !told.has(succession)),
    }))
    .filter(({ rows }) => rows.length > 0);
}

/** A sheet as text for a terminal. */
export function sheetText(sheet: Sheet, options: TextOptions): string {
  const out = page(options);
  out.head(sheet.title);
  out.say(sheet.made);
  if (sheet.needsYou.length > 0)
    out.say(
      sheet.needsYou.length === 1
        ? 'One thing needs you: see "Needs you" below.'
        : `${sheet.needsYou.length} things need you: see "Needs you" below.`,
    );
  if (sheet.urgent.some(({ kind }) => !LATER.includes(kind))) out.gap();
  urgents(out, sheet.urgent);
  if (sheet.quiet !== null) {
    out.gap();
    out.say(sheet.quiet);
  }
  section(out, "LIMITS THE PLAN CANNOT KEEP", sheet.limits);
  if (sheet.since !== null) {
    section(out, sheet.since.heading.toUpperCase(), [...sheet.since.unnoted, ...sheet.since.changed]);
  }

  const [today, later] = [
    sheet.walks.filter(({ first }) => first),
    sheet.walks.filter(({ first }) => !first),
  ];
  out.gap();
  out.head(sheet.startsToday ? "TODAY" : "NEXT WALKS");
  if (today.length === 0) out.say("No walk falls into the days planned.");
  for (const each of today) walk(out, each);

  out.gap();
  out.head("THE DAYS AT A GLANCE");
  for (const sentence of sheet.summary) out.say(sentence);
  grid(out, sheet.grid);

  out.gap();
  out.head("WALK BY WALK");
  if (later.length === 0) out.say("Nothing to do after the first day.");
  for (const each of later) walk(out, each);

  out.gap();
  out.head("PICKS");
  if (sheet.picks.length === 0) out.say("No pick in the days planned.");
  for (const each of sheet.picks) pick(out, each);

  if (sheet.misses.length > 0) {
    out.gap();
    out.head("MISSES, AND WHAT TO DO");
    for (const each of sheet.misses) miss(out, each);
  }

  section(out, "WHAT ONE MORE WOULD BE WORTH", sheet.whatIf);
  section(
    out,
    "KEEP AN EYE ON",
    sheet.urgent.filter(({ kind }) => LATER.includes(kind)).map(({ heading }) => heading),
  );

  reachText(out, sheet.reach);

  const others = untold(sheet);
  if (others.length > 0) {
    out.gap();
    out.head("STILL GROWING");
    for (const each of others) beds(out, each);
  }

  section(out, "WORTH MEASURING", sheet.strip === null ? [] : [`${sheet.strip.asked} ${sheet.strip.why}`]);
  section(out, "NEEDS YOU", sheet.needsYou);
  section(out, "MADE FROM", [...sheet.madeFrom, ...sheet.found]);
  section(out, "HOW TO READ IT", sheet.marks);
  section(out, "CAUTIONS", sheet.cautions);
  return out.text();
}

/** The week's answer as text for a terminal. */
export const weekText = (outcome: Outcome, options: TextOptions): string =>
  sheetText(sheetOf(outcome), options);
