import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Kept } from "../../src/farm/index.ts";
import { keptWords } from "../../src/folder/index.ts";
import { formatProblem } from "../../src/problem/index.ts";
import { type Instant, instantAt, localMinute } from "../../src/quantity/index.ts";
import { longRow } from "./longRow.ts";

const ZONE = "America/New_York";

/** Monday, a minute before the morning walk. */
const ON: Instant = instantAt(ZONE, "2026-04-20", 7 - 1 / 60);

const read = (...lines: readonly string[]) => keptWords("--keep", lines, { farm: longRow, on: ON, days: 7 });

const minute = (at: Instant | null): string | null => (at === null ? null : localMinute(ZONE, at));

/** What is kept, its moments as the farm's clock shows them. */
const kept = (...lines: readonly string[]) => {
  const { kept: all, problems } = read(...lines);
  expect(problems.map(formatProblem)).toEqual([]);
  return all.map((one: Kept) =>
    "tunnel" in one ? { ...one, from: minute(one.from), to: minute(one.to) } : one,
  );
};

const told = (...lines: readonly string[]): string[] => read(...lines).problems.map(formatProblem);

const lies = (from: string | null, to: string | null, cover = "row-cover-19", state = "on") => [
  { kind: "cover", tunnel: "T1", setting: cover === "" ? [] : [{ cover, state }], from, to },
];

describe("a cover that is settled", () => {
  test.each([
    ["T1 row-cover-19 on", lies(null, null)],
    ["creek 1: row cover", lies(null, null)],
    ["Creek 1 19 g vented", lies(null, null, "row-cover-19", "vented")],
    ["T1 bare", lies(null, null, "")],
    ["leave T1 uncovered", lies(null, null, "")],
    ["T1 as it is", [{ kind: "unchanged", tunnel: "T1", from: null, to: null }]],
    ["keep Creek 1 unchanged", [{ kind: "unchanged", tunnel: "T1", from: null, to: null }]],
    [
      "T1 row-cover-19 on nights from Tuesday evening to Thursday morning",
      lies("2026-04-21 18:00", "2026-04-23 07:00", "row-cover-19", "nights"),
    ],
    [
      "from Tuesday evening until Apr 23 T1 row-cover-19 at night",
      lies("2026-04-21 18:00", "2026-04-23 07:00", "row-cover-19", "nights"),
    ],
    ["Creek 1 shade-40 on Wednesday morning", lies("2026-04-22 07:00", "2026-04-22 18:00", "shade-40")],
    ["Creek 1 shade on Wednesday", lies("2026-04-22 07:00", "2026-04-23 07:00", "shade-40")],
    ["T1 bare tonight", lies("2026-04-20 18:00", "2026-04-21 07:00", "")],
    ["T1 bare tomorrow morning", lies("2026-04-21 07:00", "2026-04-21 18:00", "")],
    ["T1 bare at 18:00", lies("2026-04-20 18:00", "2026-04-21 07:00", "")],
    ["T1 bare until Thursday", lies(null, "2026-04-23 07:00", "")],
    ["T1 bare to Thursday", lies(null, "2026-04-24 07:00", "")],
    ["T1 bare from Thursday", lies("2026-04-23 07:00", null, "")],
    ["T1 bare from Saturday until Monday", lies("2026-04-25 07:00", "2026-04-27 07:00", "")],
  ])("%s", (line, expected) => {
    expect(kept(line)).toEqual(expected);
  });

  test.each([
    "T1 bare all week",
    "T1 bare all days",
    "T1 nothing on the whole week",
    "no cover on T1",
    "T1 stays bare from now on",
    "leave T1 without cloth this week",
    "T1 covers off until the end of the week",
  ])("for all that is planned as growers say it: %s", (line) => {
    expect(kept(line)).toEqual(lies(null, null, ""));
  });

  test.each(["don't touch T1", "leave Creek 1 alone", "T1 no changes all week", "T1 the same as now"])(
    "as it is as growers say it: %s",
    (line) => {
      expect(kept(line)).toEqual([{ kind: "unchanged", tunnel: "T1", from: null, to: null }]);
    },
  );

  test.each([
    ["T1 bare Tuesday to Friday", lies("2026-04-21 07:00", "2026-04-25 07:00", "")],
    ["T1 bare Tuesday\u2013Friday", lies("2026-04-21 07:00", "2026-04-25 07:00", "")],
    ["T1 bare Tuesday evening until Friday", lies("2026-04-21 18:00", "2026-04-24 07:00", "")],
    ["T1 bare since Tuesday until Friday", lies("2026-04-21 07:00", "2026-04-24 07:00", "")],
  ])("a stretch without its from: %s", (line, expected) => {
    expect(kept(line)).toEqual(expected);
  });

  describe("that is said not to lie there", () => {
    const only = {
      ...longRow,
      notes: [
        ...longRow.notes,
        {
          kind: "cover",
          at: instantAt(ZONE, "2026-04-15", 18),
          line: 9,
          remark: "",
          tunnel: "T1",
          cover: "row-cover-19",
          state: "on",
        } as const,
      ],
    };
    const none = { ...longRow, pieces: longRow.pieces.filter(({ cover }) => cover === "row-cover-19") };
    const readOn = (farm: typeof longRow, line: string) => {
      const { kept: all, problems } = keptWords("--keep", [line], { farm, on: ON, days: 7 });
      return problems.length > 0 ? problems.map(formatProblem) : all;
    };

    test.each([
      "T1 no row cover",
      "Creek 1 without row cover",
      "no 19 g on T1",
      "T1 row cover off",
      "T1 without any row cover on it",
    ])("leaves it bare where no other lies there, and where no other is at hand: %s", (line) => {
      for (const farm of [only, none]) expect(readOn(farm, line)).toEqual(lies(null, null, ""));
    });

    test.each([
      "T1 no shade",
      "T1 without net",
      "T1 no row cover nights",
      "T1 no row cover and shade",
      "T1 not row cover",
    ])("is refused where another may, and its opposite is not proposed: %s", (line) => {
      const [problem] = readOn(only, line) as string[];
      expect(problem).toContain(line);
      expect(problem).not.toContain("Did you mean");
    });

    test("is told with what may be said instead", () => {
      expect(told("T1 no row cover")).toEqual([
        '--keep: expected what lies there, received only what does not in "T1 no row cover". Say what lies there, like "Creek 1 shade-40 on", or "Creek 1 bare" where nothing does.',
      ]);
    });
  });

  test("may be two of them, one over the other", () => {
    expect(kept("T1 net and row cover nights")).toEqual([
      {
        kind: "cover",
        tunnel: "T1",
        setting: [
          { cover: "net", state: "on" },
          { cover: "row-cover-19", state: "nights" },
        ],
        from: null,
        to: null,
      },
    ]);
  });

  test("is settled for every tunnel that is named, a long one part by part", () => {
    expect(kept("T1 and Long Row bare").map((one) => "tunnel" in one && one.tunnel)).toEqual([
      "T1",
      "T9-1",
      "T9-2",
    ]);
    expect(kept("Long Row, part 2 as it is")).toEqual([
      { kind: "unchanged", tunnel: "T9-2", from: null, to: null },
    ]);
    expect(kept("T2 bare")).toHaveLength(1);
  });
});

describe("a cut that is settled", () => {
  test("on the day of a market whose pick is over is one of that day, and for that market none", () => {
    const asked = { farm: longRow, on: instantAt(ZONE, "2026-04-24", 6), days: 7 };
    expect(keptWords("--keep", ["S04 cut today"], asked).kept).toEqual([
      { kind: "cut", succession: "S04", date: "2026-04-24", part: null },
    ]);
    expect(keptWords("--keep", ["S04 cut for today"], asked).problems.map(formatProblem)).toEqual([
      '--keep: expected a time within what is planned, 2026-04-24 to 2026-04-30, received "S04 cut for today". Name a day within it, or plan more days with --days.',
    ]);
  });

  const cut = (date: string, part: string | null = null) => [{ kind: "cut", succession: "S04", date, part }];

  test.each([
    // A market whose greens are cut the day before.
    ["S04 cut Friday", cut("2026-04-23")],
    ["S04 cut for Tuesday market", cut("2026-04-21")],
    ["arugula cut on Thursday", cut("2026-04-23")],
    ["S04 cut early Wednesday morning", cut("2026-04-22", "morning")],
    ["S04 harvested 2026-04-25 at 5 pm", cut("2026-04-25", "evening")],
    ["S04 not cut", [{ kind: "uncut", succession: "S04" }]],
    ["don't cut the arugula", [{ kind: "uncut", succession: "S04" }]],
    ["pick S04 on Thursday", cut("2026-04-23")],
    ["leave S04 standing", [{ kind: "uncut", succession: "S04" }]],
    ["don't harvest S04", [{ kind: "uncut", succession: "S04" }]],
    ["S04 uncut", [{ kind: "uncut", succession: "S04" }]],
  ])("%s", (line, expected) => {
    expect(kept(line)).toEqual(expected);
  });
});

test("no line of any letters makes anything but what is settled and problems", () => {
  const word = fc.constantFrom(
    ..."T1 T9-1 Creek 1 S04 arugula bare row-cover-19 net on nights vented off cut not from to until Tuesday morning 2026-04-22 7:00 as it is and over 19 g".split(
      " ",
    ),
  );
  const line = fc.oneof(
    fc.string(),
    fc.array(word, { maxLength: 9 }).map((parts) => parts.join(" ")),
  );
  fc.assert(
    fc.property(fc.array(line, { maxLength: 3 }), (lines) => {
      const { kept: all, problems } = read(...lines);
      for (const one of all)
        if ("tunnel" in one && one.from !== null) expect(minute(one.from)).toMatch(/^2026-/u);
      expect(
        problems.length <= lines.length &&
          problems.map(formatProblem).every((text) => !/undefined|NaN/u.test(text)),
      ).toBe(true);
      expect(all.length > 0 || problems.length === lines.length).toBe(true);
    }),
    { seed: 20_260_420, numRuns: 500 },
  );
});

describe("what is not understood is told", () => {
  /** Two that work, of what the line names. */
  const examples = (line: string): string =>
    line.startsWith("T1")
      ? '"Creek 1 bare all week" or "Creek 1 as it is until Friday"'
      : line.startsWith("S04")
        ? '"S04 cut Friday" or "S04 not cut"'
        : '"Creek 1 bare" or "S04 cut Friday"';

  test("the examples it gives are understood", () => {
    expect(
      told("Creek 1 bare all week", "Creek 2 as it is until Friday", "S04 cut Friday", "S05 not cut"),
    ).toEqual([]);
  });

  test.each([
    ["S4 cut Friday", 'Did you mean "S04 cut Friday"?'],
    ["T1 shade from Tuesday to Wedensday", 'Did you mean "T1 shade from Tuesday to Wednesday"?'],
    ["T1 row-cover-91 on", 'Not understood: "91". At hand: row-cover-19, shade-40, net.'],
    ["Creek 7 bare", "Name a tunnel or a succession: T1, T2, T9, T9-1, T9-2, S04, S05, S06."],
    ["S04 bare", 'Say "S04 cut Friday" or "S04 not cut"; of covers say "Creek 1 bare".'],
    ["S04 cut", 'Say the day, like "S04 cut Friday".'],
    ["S04 not cut Friday", 'Leave the day out: "S04 not cut" counts for all that is planned.'],
    ["T1 on Wednesday", 'Say what lies there, like "Creek 1 bare" or "Creek 1 as it is".'],
    ["T1 off", 'Say what lies there, or "Creek 1 bare" where nothing does.'],
    [
      "T1 row-cover-19 on at 9:00",
      "Covers change on a walk; say morning or evening in the place of the hour.",
    ],
    ["T1 bare for ever", 'Not understood: "for ever".'],
    ["T1 bare from Wednesday evening to Wednesday morning", "The end lies before the beginning; swap them."],
    ["T1 row-cover-19 vented nights", "Say one of on, vented, nights and bare."],
  ])("%s", (line, hint) => {
    expect(told(line)).toEqual([
      `--keep: expected something settled, like ${examples(line)}, received "${line}". ${hint}`,
    ]);
  });

  test("outside what is planned", () => {
    const within = "expected a time within what is planned, 2026-04-20 to 2026-04-26";
    const hint = "Name a day within it, or plan more days with --days.";
    for (const line of [
      "T1 bare yesterday",
      "T1 bare on 2026-05-04",
      "S04 cut 2026-04-27",
      "S04 cut yesterday",
    ])
      expect(told(line)).toEqual([`--keep: ${within}, received "${line}". ${hint}`]);
  });

  test("of cloth nobody has, that lies on no hoops, or that has no such state", () => {
    expect(told("T1 row-cover-30 on", "T2 net on", "T1 shade-40 nights")).toEqual([
      '--keep: expected a piece long enough for Creek 1, received none of row-cover-30 in "T1 row-cover-30 on". At hand: row-cover-19, shade-40, net.',
      '--keep: expected a tunnel with hoops under the cover, received Creek 2, hoops: none in "T2 net on". Correct the tunnel here or its hoops in farm.yaml.',
      '--keep: expected row cover or film, received shade-40, which only lies or does not in "T1 shade-40 nights". Say "Creek 1 shade-40 on".',
    ]);
  });

  test("of two that go against each other", () => {
    expect(told("T1 bare", "T1 row-cover-19 on Friday", "S04 cut Friday", "S04 not cut")).toEqual([
      '--keep: expected each thing settled once, received "T1 row-cover-19 on Friday". It goes against "T1 bare"; leave one of the two out.',
      '--keep: expected each thing settled once, received "S04 not cut". It goes against "S04 cut Friday"; leave one of the two out.',
    ]);
    expect(told("T1 bare until Thursday", "T1 net from Thursday", "S05 not cut", "S04 cut Tuesday")).toEqual(
      [],
    );
  });

  test("all at once, and what is understood is kept", () => {
    const { kept: all, problems } = read("T1 bear", "S04 not cut", "hello");
    expect(all).toEqual([{ kind: "uncut", succession: "S04" }]);
    expect(problems).toHaveLength(2);
  });
});
