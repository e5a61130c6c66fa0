import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { CoverState, Farm, Note } from "../../src/farm/index.ts";
import { NOTHING_SAID, noteWalk, noteWords, plainLine, type Said, saidIn } from "../../src/folder/index.ts";
import { centimetre, type Instant, inches, instant, instantAt, pounds } from "../../src/quantity/index.ts";
import { farmOf, messages } from "./fixtures.ts";

const ZONE = "America/New_York";

/** Monday, 11:00 on the farm's clock. */
const NOW: Instant = instantAt(ZONE, "2026-04-20", 11);

const settings = (units: string, length: string): string => `name: Willow Bend
units: ${units}
place: { latitude: 44.12, longitude: -72.84, elevation: 620 ft, zone: ${ZONE} }
walks: { morning: "7:00", evening: "18:00" }
markets:
  - { id: friday, day: Friday, picks: [{ time: "6:00" }] }
tunnels:
  - { id: T1, name: Creek 1, length: ${length}, hoops: wire }
  - { id: T2, name: Creek 2, length: ${length}, hoops: wire }
  - { id: T3, name: Alder 3, length: ${length}, hoops: wire }
  - { id: T4, name: Mill 1, length: ${length}, hoops: none }
`;

const farm = (units: "US" | "metric" = "US"): Farm =>
  farmOf({
    farm: settings(units, "50 ft"),
    successions: `id,crop,tunnel,from (ft),to (ft),sown
S01,lettuce-mix,T1,0,50,2026-02-25
S03,spinach,T2,0,20,2026-02-26
S04,arugula,T2,20,50,2026-03-07
S09,mustard,T3,0,50,2026-04-17`,
    pieces: `id,cover,length (ft),count,lies on
light-60,row-cover-19,60,2,T1 T2
heavy-60,row-cover-30,60,1,
net-60,net,60,2,T2
shade-60,shade-30,60,1,
dark-60,shade-40,60,1,`,
  });

const US = farm();
const METRIC = farm("metric");

const walk = (text: string, at: Farm = US, said: Said = NOTHING_SAID) =>
  noteWalk(text, { file: "walk.txt", numbered: true }, at, NOW, said);

const rowsOf = (text: string, at: Farm = US): string[] => {
  const { notes, problems } = walk(text, at);
  expect(messages({ problems })).toEqual([]);
  return notes.map(({ row }) => Object.values(row).join());
};

const told = (text: string, at: Farm = US): string[] => messages(walk(text, at));

describe("a line of words", () => {
  test.each([
    ["S01 4in 3.5in 4.2in 4 3.75", "2026-04-20 11:00,leaf,S01,4 in 3.5 in 4.2 in 4 in 3.75 in,"],
    ["leaf S01: 4½, 4 1/2, 4-1/2, ¾", "2026-04-20 11:00,leaf,S01,4.5 in 4.5 in 4.5 in 0.75 in,"],
    ['s01 4" 3.5”', "2026-04-20 11:00,leaf,S01,4 in 3.5 in,"],
    ["S01 10cm 9", "2026-04-20 11:00,leaf,S01,10 cm 9 cm,"],
    ["yesterday 4 in S01", "2026-04-19,leaf,S01,4 in,"],
    ["S01 4,3.5,4.25 in.", "2026-04-20 11:00,leaf,S01,4 in 3.5 in 4.25 in,"],
    ["S09 is up since Sunday", "2026-04-19,emerged,S09,,"],
    ["S09 emerged this morning", "2026-04-20 07:00,emerged,S09,,"],
    ["S01 cut 14 lb", "2026-04-20 11:00,cut,S01,14 lb,"],
    ["cut S03 14# last", "2026-04-20 11:00,cut,S03,14 lb last,"],
    ["S03 last cut, 14 lb 8 oz", "2026-04-20 11:00,cut,S03,14.5 lb last,"],
    ["S03 cut", "2026-04-20 11:00,cut,S03,,"],
    ["S04 lost 20% - slugs", "2026-04-20 11:00,loss,S04,20 %,slugs"],
    ["S04 lost a third # hail", "2026-04-20 11:00,loss,S04,33.3 %,hail"],
    ["lost all of S04", "2026-04-20 11:00,loss,S04,100 %,"],
    ["S04 lost half to pigeons", "2026-04-20 11:00,loss,S04,50 %,pigeons"],
    ["arugula lost a third by hail", "2026-04-20 11:00,loss,S04,33.3 %,hail"],
    ["Creek 1 4 in", "2026-04-20 11:00,leaf,S01,4 in,"],
    ["spinach creek 2 3in", "2026-04-20 11:00,leaf,S03,3 in,"],
    ["S01 sown again; the same mix", "2026-04-20 11:00,resown,S01,,the same mix"],
    ["S01 4 in (at the creek end)", "2026-04-20 11:00,leaf,S01,4 in,at the creek end"],
    ["S01 - 4 in - =SUM(A1)", "2026-04-20 11:00,leaf,S01,4 in,'=SUM(A1)"],
  ])("%s", (line, row) => {
    expect(rowsOf(line)).toEqual([row]);
  });

  test.each([
    ["10,5 cm 9,5", "10.5 cm 9.5 cm"],
    ["10", "10 cm"],
    ["4 in", "10.16 cm"],
  ])("where a farm counts in metres, %s is %s", (length, value) => {
    expect(rowsOf(`S01 ${length}`, METRIC)).toEqual([`2026-04-20 11:00,leaf,S01,${value},`]);
  });

  test.each([
    ["cut S03 14 lb 8 oz", "14.5 lb"],
    ["cut S03 14 lb + 2 lb", "16 lb"],
    ["cut S03 14 lb and 2 lb 8 oz", "16.5 lb"],
    ["cut S03 6 & 8 lb", "14 lb"],
  ])("%s is %s", (line, value) => {
    expect(rowsOf(line)).toEqual([`2026-04-20 11:00,cut,S03,${value},`]);
  });

  test.each([
    ["S01 8,5cm 9.5cm", US],
    ["S01 8,5 cm 9.5", METRIC],
    ["S01 8,5.5 cm", METRIC],
    ["S01 4,5 3.5 in", US],
    ["cut S03 14,5 lb 2.5 oz", US],
  ])("a comma that may be a decimal one beside a point is refused: %s", (line, at) => {
    expect(told(line, at)).toEqual([
      `walk.txt:1: expected a note like "S01 ${at === US ? "4 in" : "10 cm"}", received "${line}". Write a point for decimals, and a blank between numbers.`,
    ]);
  });

  test("a range, a number below nothing and weights nobody joined are refused", () => {
    const refused = (line: string, hint: string): string =>
      `walk.txt:1: expected a note like "S01 4 in", received "${line}". ${hint}`;
    for (const line of [
      "S03 cut 10-12 lb",
      "S03 cut 10 - 12 lb",
      "S03 cut 10\u201312 lb",
      "S03 cut -3 lb",
      "S03 cut 14 lb -2 lb",
      "S03 cut 14 lb 2 lb",
      "S03 cut 14, 2 lb",
      "S03 cut 14 lb 8 oz 2 lbs",
      "S03 cut 10-12 lb - nice leaves",
    ])
      expect(told(line)).toEqual([refused(line, "Write one weight.")]);
    for (const line of ["S01 3-4 in", "S01 3 - 4 in", "S01 4 in -3 in", "S01-4 in"])
      expect(told(line)).toEqual([refused(line, "Write one length a plant.")]);
    expect(told("S04 lost -20 %")).toEqual([refused("S04 lost -20 %", "Write one share.")]);
    expect(told("S03 cut 0 lb")).toEqual([
      'walk.txt:1: expected a weight above 0, received "S03 cut 0 lb". Write what was cut, or leave the weight out.',
    ]);
  });

  test("a word that belongs to another kind of note is refused", () => {
    expect(told("S09 up last\nS04 lost all 20 %\nCreek 1 cover off last")).toEqual([
      'walk.txt:1: expected a note like "S01 4 in", received "S09 up last". Leave "last" out, or write it on a line of its own.',
      'walk.txt:2: expected a note like "S01 4 in", received "S04 lost all 20 %". Say which share, like "20 %" or "a third".',
      'walk.txt:3: expected a note like "S01 4 in", received "Creek 1 cover off last". Leave "last" out.',
    ]);
  });

  test("several beds share a line where none has a measure of its own", () => {
    expect(rowsOf("S01, S03 and S04 up Apr 10")).toEqual(
      ["S01", "S03", "S04"].map((id) => `2026-04-10,emerged,${id},,`),
    );
    expect(told("S01 and S03 4 in")).toEqual([
      'walk.txt:1: expected a note like "S01 4 in", received "S01 and S03 4 in". Write a line for each succession, since a measure belongs to one.',
    ]);
  });
});

describe("a cover", () => {
  test.each([
    ["Creek 1 row cover 19 off", ["T1,row-cover-19 off"]],
    ["creek-1: cover off", ["T1,row-cover-19 off"]],
    ["T1 off", ["T1,row-cover-19 off"]],
    ["Alder 3 heavy on", ["T3,row-cover-30 on"]],
    ["put light-60 on Alder 3", ["T3,row-cover-19 on"]],
    ["Alder 3 40 % shade on", ["T3,shade-40 on"]],
    ["Alder 3 insect net on", ["T3,net on"]],
    ["Creek 2 cover vented", ["T2,row-cover-19 vented"]],
    ["Creek 1 row cover on every night", ["T1,row-cover-19 nights"]],
    ["Creek 2 net off", ["T2,net off"]],
    ["Creek 2 bare", ["T2,net off", "T2,row-cover-19 off"]],
    ["Creek 1 and T2: all covers off", ["T1,row-cover-19 off", "T2,net off", "T2,row-cover-19 off"]],
    ["Creek 1, Creek 2 row cover off", ["T1,row-cover-19 off", "T2,row-cover-19 off"]],
  ])("%s", (line, covers) => {
    expect(rowsOf(line)).toEqual(covers.map((about) => `2026-04-20 07:00,cover,${about},`));
  });

  test("without an hour was moved at the walk before, and says so", () => {
    expect(walk("Creek 1 cover off").notes[0]!.moment.said).toBe("morning");
    expect(rowsOf("Creek 1 cover off on Saturday")).toEqual(["2026-04-18 18:00,cover,T1,row-cover-19 off,"]);
    expect(rowsOf("Creek 1 net on Tuesday 6:30 pm")).toEqual(["2026-04-14 18:30,cover,T1,net on,"]);
  });

  test("that could be one of several is refused, with their names", () => {
    expect(
      told("Creek 2 cover off\nAlder 3 shade on\nAlder 3 cover off\nCreek 1 heavy off\nMill 1 net on"),
    ).toEqual([
      'walk.txt:1: expected one cover, net or row-cover-19, received words that fit more than one in "Creek 2 cover off". Name it, like "Creek 2 net off".',
      'walk.txt:2: expected one cover, shade-30 or shade-40, received words that fit more than one in "Alder 3 shade on". Name it, like "Alder 3 shade-30 on".',
      'walk.txt:3: expected a cover on Alder 3, received none by then in "Alder 3 cover off". Take the line out, or note first what was put on.',
      'walk.txt:4: expected a cover that lies on Creek 1, row-cover-19, received another in "Creek 1 heavy off". Name it, like "Creek 1 row-cover-19 off".',
      'walk.txt:5: expected a tunnel with hoops under the cover, received Mill 1, hoops: none in "Mill 1 net on". Correct the tunnel here or its hoops in farm.yaml.',
    ]);
  });

  test("of a kind that only lies or does not is refused in between", () => {
    expect(told("Alder 3 shade nights")).toEqual([
      'walk.txt:1: expected row cover or film, received one that only lies or does not in "Alder 3 shade nights". Say "on" or "off".',
    ]);
  });

  test("counts from the lines before it in the same walk", () => {
    expect(rowsOf("Alder 3 heavy on Apr 18 18:00\nAlder 3 cover off")).toEqual([
      "2026-04-18 18:00,cover,T3,row-cover-30 on,",
      "2026-04-20 07:00,cover,T3,row-cover-30 off,",
    ]);
  });
});

describe("when", () => {
  test.each([
    ["S01 4 in 2026-04-18 7:10", "2026-04-18 07:10"],
    ["S01 4 in 2026-04-18T19:05", "2026-04-18 19:05"],
    ["S01 4 in, Apr 18, 7am", "2026-04-18 07:00"],
    ["18th of April 2026, S01 4 in", "2026-04-18"],
    ["S01 4 in yesterday evening", "2026-04-19 18:00"],
    ["S01 4 in last night", "2026-04-19 18:00"],
    ["S01 4 in Monday", "2026-04-20"],
    ["S01 4 in last Monday", "2026-04-13"],
    ["S01 4 in Sat Apr 11", "2026-04-11"],
    ["7:10 Apr 18 S01 4 in", "2026-04-18 07:10"],
    ["S01 4 in yesterday 7.15pm", "2026-04-19 19:15"],
  ])("%s is %s", (line, when) => {
    expect(rowsOf(line)).toEqual([`${when},leaf,S01,4 in,`]);
  });

  test("a day or hour still to come, and one that cannot be, are refused", () => {
    const ahead = "expected a day and hour up to now, 2026-04-20, received one still to come in";
    expect(
      told(
        "S01 4 in tomorrow\nS01 4 in Apr 21\nS01 4 in 11:30\nCreek 1 cover off this evening\nS01 4 in Feb 30\nS01 4 in Tue Apr 20\nS03 cut 4 lb last Friday\nS01 4 in 5 Apr 10\nS01 4/20",
      ),
    ).toEqual([
      `walk.txt:1: ${ahead} "S01 4 in tomorrow". Note it once it is done.`,
      `walk.txt:2: ${ahead} "S01 4 in Apr 21". Note it once it is done.`,
      `walk.txt:3: ${ahead} "S01 4 in 11:30". Note it once it is done.`,
      `walk.txt:4: ${ahead} "Creek 1 cover off this evening". Note it once it is done.`,
      'walk.txt:5: expected a note like "S01 4 in", received "S01 4 in Feb 30". There is no such day; write it as year-month-day, like 2026-04-18.',
      'walk.txt:6: expected a note like "S01 4 in", received "S01 4 in Tue Apr 20". It says two different days; keep one of them.',
      'walk.txt:7: expected a note like "S01 4 in", received "S03 cut 4 lb last Friday". Write "last cut" for the last one, and the day by itself.',
      'walk.txt:8: expected a note like "S01 4 in", received "S01 4 in 5 Apr 10". Write the day as year-month-day, like 2026-04-18: the number before and the one behind the month could both be it.',
      'walk.txt:9: expected a note like "S01 4 in", received "S01 4/20". "4/20" is no fraction of a ruler; write a day like Apr 21.',
    ]);
  });

  test.each([
    ["2026-11-25", "Mon Apr 20", "2026-04-20"],
    ["2026-01-03", "Dec 30", "2025-12-30"],
    ["2026-12-30", "Jan 2", "2027-01-02"],
    ["2026-04-20", "Apr 21", "2026-04-21"],
    ["2026-04-20", "Aug 1", "2025-08-01"],
  ])("on %s, %s is %s", (today, text, date) => {
    expect(saidIn(text, instantDate(today)!, "US")).toMatchObject({ date });
  });

  test("a heading sets the day of the lines below it, and a line's own day is stronger", () => {
    expect(
      rowsOf(
        "Saturday's walk:\nS01 4 in\nS03 3 in Apr 10\n\n# Sun Apr 19, 7am\nS01 4 1/4 in\nS03 cut 8 lb 18:00\nEvening notes\nS04 3 in",
      ),
    ).toEqual([
      "2026-04-18,leaf,S01,4 in,",
      "2026-04-10,leaf,S03,3 in,",
      "2026-04-19 07:00,leaf,S01,4.25 in,",
      "2026-04-19 18:00,cut,S03,8 lb,",
      "2026-04-19 18:00,leaf,S04,3 in,",
    ]);
  });

  test("what --on says counts for lines that say nothing", () => {
    const said: Said = { date: instantDate("2026-04-17"), hour: 19 };
    expect(walk("S01 4 in\nS03 3 in yesterday", US, said).notes.map(({ row }) => row.when)).toEqual([
      "2026-04-17 19:00",
      "2026-04-16",
    ]);
    expect(walk("S01 4 in on Wednesday", US, said).notes[0]!.row.when).toBe("2026-04-15");
  });

  test("yesterday below a heading is the day before it, that of a heading the day before today", () => {
    expect(
      rowsOf(
        "Sat Apr 18\nS01 4 in yesterday\nS03 3 in last night\nS04 3 in\nYesterday\nS01 4 1/4 in\nToday\nS01 5 in",
      ),
    ).toEqual([
      "2026-04-17,leaf,S01,4 in,",
      "2026-04-17 18:00,leaf,S03,3 in,",
      "2026-04-18,leaf,S04,3 in,",
      "2026-04-19,leaf,S01,4.25 in,",
      "2026-04-20,leaf,S01,5 in,",
    ]);
  });
});

const instantDate = (date: string): Said["date"] => date as Said["date"];

describe("a walk pasted from a phone", () => {
  test("loses its bullets, boxes, numbers, pictures and curly quotes", () => {
    const lines = [
      "• S01 4½ in",
      "- [x] S01 4½ in.",
      "12. S01 4½ in",
      "☑️ S01 4½ in!",
      "1️⃣ S01 4½ in",
      "*\u00a0S01\u00a04½\u00a0in 🌱",
    ];
    expect(new Set(lines.map((line) => plainLine(line).replace(/ +/gu, " ")))).toEqual(
      new Set(["S01 4 1/2 in"]),
    );
  });

  test("tells every line that is not understood, with the nearest that is", () => {
    expect(
      told(
        "S0l 4in\nS01 4 in slugs\nCrek 1 cover off\nS09 emergd\nS01 4 in in the yard\nhello\nCreek 2 4 in\nS01 cover off\nS01 up, cover off\nS01 4 in; S03 3 in; S04 2 in\nS01 4,5\n[ ] S01 4 in\nS04 lost some\nS01 90 in\nS09 2 in Apr 10",
      ),
    ).toEqual([
      'walk.txt:1: expected a note like "S01 4 in", received "S0l 4in". Did you mean "S01 4 in"?',
      'walk.txt:2: expected a note like "S01 4 in", received "S01 4 in slugs". Did you mean "S01 4 in - slugs"?',
      'walk.txt:3: expected a note like "S01 4 in", received "Crek 1 cover off". Did you mean "Creek 1 row-cover-19 off"?',
      'walk.txt:4: expected a note like "S01 4 in", received "S09 emergd". Did you mean "S09 up"?',
      'walk.txt:5: expected a note like "S01 4 in", received "S01 4 in in the yard". Did you mean "S01 4 in - in the yard"?',
      'walk.txt:6: expected a note like "S01 4 in", received "hello". Say which succession, by its id.',
      'walk.txt:7: expected a note like "S01 4 in", received "Creek 2 4 in". Say which succession: S03 or S04.',
      'walk.txt:8: expected a note like "S01 4 in", received "S01 cover off". A cover lies on a tunnel: say "Creek 1" for S01.',
      'walk.txt:9: expected a note like "S01 4 in", received "S01 up, cover off". Write a line for each thing that was seen or done.',
      'walk.txt:10: expected a note like "S01 4 in", received "S01 4 in; S03 3 in; S04 2 in". Write each note on a line of its own.',
      'walk.txt:11: expected a note like "S01 4 in", received "S01 4,5". Write a point for decimals, and a blank between numbers.',
      'walk.txt:12: expected a box that is ticked, received an open one in "[ ] S01 4 in". Tick it or take the line out.',
      'walk.txt:13: expected a note like "S01 4 in", received "S04 lost some". Say which share, like "20 %" or "a third".',
      'walk.txt:14: expected leaf lengths between 0 and 60 cm (24 in), received "S01 90 in". Note the longest leaf of each of some five plants.',
      'walk.txt:15: expected a date from 2026-04-17 on, when S09 was sown, received 2026-04-10 in "S09 2 in Apr 10". Correct the date here or in successions.csv.',
    ]);
  });

  test("tells which successions there are, and where a remark goes", () => {
    expect(told("S8 up\nCreek 1 looks yellow\nS04 very pale")).toEqual([
      'walk.txt:1: expected a note like "S01 4 in", received "S8 up". S8 is none of the successions known here: S01, S03, S04, S09.',
      'walk.txt:2: expected a note like "S01 4 in", received "Creek 1 looks yellow". A remark goes behind something seen or done, like "S01 4 in - looks yellow".',
      'walk.txt:3: expected a note like "S01 4 in", received "S04 very pale". A remark goes behind something seen or done, like "S04 4 in - very pale".',
    ]);
    expect(told("S9 up")).toEqual([
      'walk.txt:1: expected a note like "S01 4 in", received "S9 up". Did you mean "S09 up"?',
    ]);
  });

  test("knows what it has said already", () => {
    const { notes } = walk("S01 4 in\nS01 4in today\nS01 4 in 7:10\nCreek 1 cover off\nT1 bare");
    expect(notes.map(({ already }) => already)).toEqual([false, true, false, false, true]);
  });
});

describe("a walk of any size is read in time", () => {
  /** Many times what it takes, so that a busy machine does not fail it; before, it took 20 s and more. [s] judgement */
  const PATIENCE = 8;

  const seconds = (work: () => void): number => {
    const begun = performance.now();
    work();
    return (performance.now() - begun) / 1000;
  };

  test("a thousand lines beside three thousand notes", () => {
    const notes: Note[] = Array.from({ length: 3000 }, (_, index) => ({
      kind: "leaf",
      at: instantAt(ZONE, "2026-03-01", index / 6),
      line: index + 2,
      remark: "",
      succession: "S01",
      lengths: [centimetre(1 + (index % 400) / 10)],
    }));
    const lines = Array.from({ length: 1000 }, (_, index) => `S01 ${1 + (index % 80) / 8} in`).join("\n");
    const read = (): void => expect(walk(lines, { ...US, notes }).notes).toHaveLength(1000);
    expect(seconds(read)).toBeLessThan(PATIENCE);
  });

  test("lines that are hard to cut", () => {
    const dashes = (words: number): string => `S01 foo - bar ${"- word ".repeat(words)}`;
    const lines = [
      `S01 4 in ${"word ".repeat(2000)}`,
      dashes(1000),
      "- ".repeat(100_000),
      ...new Array<string>(40).fill(dashes(40)),
    ].join("\n");
    const read = (): void => expect(walk(lines).notes).toEqual([]);
    expect(seconds(read)).toBeLessThan(PATIENCE);
  });

  test("a line no note fills is refused", () => {
    expect(told(`S01 4 in${" and so on".repeat(30)}`)).toEqual([
      'walk.txt:1: expected lines of at most 300 letters, received 308 letters in "S01 4 in and so on and so on and so on and so on and so o...". Write each note on a line of its own, and shorten its remark.',
    ]);
  });
});

const succession = fc.constantFrom("S01", "S03", "S04");
const eighths = fc.integer({ min: 1, max: 64 }).map((count) => inches(count / 8));

const about: fc.Arbitrary<Note> = fc
  .oneof(
    fc.record({
      kind: fc.constant("leaf" as const),
      succession,
      lengths: fc.array(eighths, { minLength: 1, maxLength: 6 }),
    }),
    fc.record({
      kind: fc.constant("strip" as const),
      succession,
      lengths: fc.array(eighths, { minLength: 1, maxLength: 6 }),
    }),
    fc.record({ kind: fc.constant("emerged" as const), succession }),
    fc.record({ kind: fc.constant("not ready" as const), succession }),
    fc.record({ kind: fc.constant("resown" as const), succession }),
    fc.record({
      kind: fc.constant("cut" as const),
      succession,
      weight: fc.option(fc.integer({ min: 1, max: 200 }).map((count) => pounds(count / 4))),
      last: fc.boolean(),
    }),
    fc.record({
      kind: fc.constant("loss" as const),
      succession,
      share: fc.integer({ min: 1, max: 100 }).map((count) => count / 100),
    }),
    fc.record({
      kind: fc.constant("cover" as const),
      tunnel: fc.constantFrom("T1", "T3"),
      cover: fc.constantFrom("row-cover-19", "row-cover-30", "shade-30", "net"),
      state: fc.constantFrom<CoverState>("on", "vented", "nights"),
    }),
  )
  .map((note) => ({ ...note, at: instant(0), line: 1, remark: "" }));

const remark = fc.constantFrom("", "by the slugs' own door", "=1+1", "2 rows, 4 in apart; dry", "très beau");

/** Moments, as they are said and as they are. */
const moment = fc
  .record({ day: fc.integer({ min: 10, max: 19 }), minutes: fc.integer({ min: 0, max: 1439 }) })
  .map(({ day, minutes }) => {
    const [hour, minute] = [Math.floor(minutes / 60), String(minutes % 60).padStart(2, "0")];
    const half = hour < 12 ? "am" : "pm";
    const [twelve, two] = [hour % 12 === 0 ? 12 : hour % 12, String(hour).padStart(2, "0")];
    return {
      at: instantAt(ZONE, `2026-04-${day}`, minutes / 60),
      said: [
        `2026-04-${day} ${two}:${minute}`,
        `Apr ${day}, ${twelve}:${minute} ${half}`,
        `April ${day}th ${twelve}:${minute}${half.toUpperCase()}`,
      ],
    };
  });

const oneOf = <Value>(items: readonly Value[], pick: number): Value => items[pick % items.length]!;

/** A line as one of many people writes it. */
function written(note: Note, said: string, pick: number): string {
  const words = noteWords(note, US);
  const units = words
    .replace(/ in\b/gu, oneOf([" in", "in", '"', "″", " inches", " In", "\u00a0in"], pick))
    .replace(/ lb\b/gu, oneOf([" lb", "lb", "#", " pounds", " LBS"], pick))
    .replace(/ %/gu, oneOf([" %", "%", " percent"], pick));
  const verb = units
    .replace(/\bup\b/u, oneOf(["up", "emerged", "is up", "Up"], pick))
    .replace(/\bnot ready\b/u, oneOf(["not ready", "not ready yet", "is not yet ready", "isn't ready"], pick))
    .replace(/\bstrip\b/u, oneOf(["strip", "check strip", "bare strip"], pick))
    .replace(/\bresown\b/u, oneOf(["resown", "sown again", "re-sown"], pick))
    .replace(
      /row-cover-(19|30)/u,
      oneOf(["row-cover-$1", "row cover $1", "Row cover, $1 g", "$1 g row cover"], pick),
    );
  const cased = oneOf([verb, verb.toLowerCase(), verb.toUpperCase()], pick >> 2);
  const ordered = oneOf([`${cased} ${said}`, `${said} ${cased}`, `${said}: ${cased}.`], pick >> 4);
  const marked = oneOf(["", "- ", "• ", "1. ", "- [x] ", "✅ "], pick >> 6) + ordered;
  return note.remark === "" ? marked : `${marked} ${oneOf(["-", "–", "#"], pick >> 8)} ${note.remark}`;
}

test("a note of any kind, however it is written, reads back as itself", () => {
  fc.assert(
    fc.property(about, remark, moment, fc.nat({ max: 1 << 12 }), (kind, remarked, { at, said }, pick) => {
      const note = { ...kind, at, remark: remarked };
      const line = written(note, oneOf(said, pick), pick);
      const { notes, problems } = walk(line);
      expect(messages({ problems })).toEqual([]);
      expect(notes.map((read) => read.note)).toEqual([note]);
    }),
    { numRuns: 1000, seed: 7 },
  );
});

test("no line of any letters makes anything but notes, headings and problems", () => {
  const piece = fc.oneof(
    fc.constantFrom(
      "S01",
      "Creek 1",
      "up",
      "cut",
      "lost",
      "last",
      "on",
      "off",
      "4",
      "½",
      "in",
      "%",
      "-",
      "#",
      ";",
      "(",
      "Apr",
      "Monday",
      "7am",
      "2026-04-18",
      "[",
    ),
    fc.string({ unit: "binary", maxLength: 4 }),
  );
  fc.assert(
    fc.property(fc.array(piece, { maxLength: 8 }), (pieces) => {
      const { notes, problems } = walk(pieces.join(" "));
      for (const { row } of notes) expect(Object.values(row).join()).not.toMatch(/NaN|undefined/u);
      for (const text of messages({ problems })) expect(text).not.toMatch(/NaN|undefined/u);
    }),
    { numRuns: 500, seed: 7 },
  );
});

test("a leaf in centimetres is written as it was said", () => {
  expect(walk("S01 10 cm").notes.map(({ note }) => note)).toMatchObject([{ lengths: [centimetre(10)] }]);
});
