import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import { scoreHtml, scoreJson, scoreText } from "../../src/sheet/index.ts";
import { later } from "../../src/sheet/scoreWords.ts";
import { scored, scoreInput } from "./scoreSample.ts";

const plain = { width: 80, unicode: true, color: false };

describe("score as text", () => {
  // Counted by hand from the ten beds of the sample: days off 0 1 2 0 3 2 −1 0 1 1; ranges 3 days wide, one missed by one
  // day; odds 0.8 0.8 0.8 0.7 come, 0.7 not, 0.5 once, 0.2 0.1 0.1 not: Brier 1.26/10; pounds as weighed.
  test("says what to trust, crop by crop and bed by bed", () => {
    expect(scoreText(scored(), plain)).toBe(`Two Oaks: how past sheets did
Up to Sun May 10, 7 am, 2026: 1 sheet issued.

Trust the dates as their ranges say: 9 of 10 beds came inside a range that
should hold 4 of 5.
10 beds leave open a true share from 55 to 100 in 100; 80 is what was said.
Salad size came 0.9 days later than said, on the whole.

DATES, SIZES AND WEIGHTS
Crop      Usually off On the whole   Dates held Sizes held Cut of expected
arugula   1.3 days    1.3 days later 5 of 6     4 of 6     48.5 lb of 55 lb
kale      0.8 days    0.3 days later 4 of 4     1 of 4     15.43 lb of 13 lb
all crops 1.1 days    0.9 days later 9 of 10    5 of 10    63.93 lb of 68 lb

SALAD SIZE, BED BY BED
Bed           Said       4 of 5 in Was        Off           Inside
arugula (S01) Wed Apr 22 Apr 21–24 Wed Apr 22 on the day    yes
arugula (S02) Wed Apr 22 Apr 21–24 Thu Apr 23 1 day later   yes
arugula (S03) Tue Apr 21 Apr 20–23 Thu Apr 23 2 days later  yes
arugula (S04) Thu Apr 23 Apr 22–25 Thu Apr 23 on the day    yes
arugula (S05) Tue Apr 21 Apr 20–23 Fri Apr 24 3 days later  no
arugula (S06) Wed Apr 22 Apr 21–24 Fri Apr 24 2 days later  yes
kale (S07)    Thu Apr 23 Apr 22–25 Wed Apr 22 1 day earlier yes
kale (S08)    Fri Apr 24 Apr 23–26 Fri Apr 24 on the day    yes
kale (S09)    Fri Apr 24 Apr 23–26 Sat Apr 25 1 day later   yes
kale (S10)    Thu Apr 23 Apr 22–25 Fri Apr 24 1 day later   yes

ODDS OF SALAD SIZE
- Said about 1 in 5: was 0 of 3.
- Said about 3 in 5: was 1 of 2.
- Said about 4 in 5: was 4 of 5.
- All odds together: 0.13 by Brier's score, where 0 is perfect; saying the same
  every time would have made 0.25.

RANGES
- Sizes said 1 to 7 days ahead: 5 of 10 in their range.
- A date's range and ten times what it missed by: 4.0 days on the whole; the
  less the better.

OTHER DAYS
- Came up 1 day later than said, usually 1 day off: 1 sowing.
- Cut on the very day planned: 4 of 6.

PICKS
Pick       Market         Expected Cut      Ordered
Fri Apr 24 Saturday stall 20 lb    24.25 lb 17.64 lb

FORECASTS
Ahead    Highs off Run         Lows off Run         Forecasts
same day 1.8 °F    1.8 °F warm 1.8 °F   1.8 °F cold 1
day 1    1.8 °F    1.8 °F warm 1.8 °F   1.8 °F cold 1
day 2    1.8 °F    1.8 °F warm 1.8 °F   1.8 °F cold 1

NEEDS YOU
- forecasts: expected a forecast up to Fri Apr 24, received one that ends Thu
  Apr 23. Import a newer one with leafpace import.

HOW TO READ IT
- What was said is by the last sheet issued a day or more before. Held: it came
  inside the range that 4 of 5 should.
- A bed came to salad size where a straight line between two leaves, a week
  apart at most, reaches the smallest size.
- A size at a pick is known where a leaf was measured within a day of it, or
  before and after it within a week.
- Cut and expected are of beds cut within a day of when the sheet told a weight.
- A pick is told where every bed that was to be cut for it was weighed; expected
  is the salad-size weight of all products.
- Forecasts run warm where they said more than your log outside measured.
`);
  });

  test("keeps to its width, and says everything in sentences where columns have no room", () => {
    for (const width of [60, 70, 80, 120]) {
      const lines = scoreText(scored(), { ...plain, width }).split("\n");
      expect(lines.filter((line) => [...line].length > width)).toEqual([]);
    }
    expect(scoreText(scored(), { width: 60, unicode: false, color: false })).toContain(
      "- arugula (S05). Said: Tue Apr 21; 4 of 5 in: Apr 20-23;\n  Was: Fri Apr 24; Off: 3 days later; Inside: no.\n",
    );
  });

  test("without a sheet says calmly what to do", () => {
    expect(scoreText(scored({ sheets: [], forecasts: [], problems: [] }), plain)).toBe(
      `Two Oaks: how past sheets did
Up to Sun May 10, 7 am, 2026: no sheet issued.

No sheet has been issued yet. Each Monday run "leafpace week --issue": it keeps
the sheet in sheets/ as it is given out, and later this page says how it did.
Measure a leaf of each bed before and after it comes to salad size, a week apart
at most, and on the morning of a pick; note cuts with their weight.
`,
    );
  });

  test("of one crop alone has no sum, and metric farms read °C and kg", () => {
    const input = scoreInput();
    const farm = { ...input.farm, units: "metric" as const, currency: null };
    const sheets = input.sheets.map((sheet) => ({
      ...sheet,
      successions: sheet.successions.filter(({ crop }) => crop === "kale"),
    }));
    const text = scoreText(scored({ farm, sheets }), plain);
    expect(text).toContain(`DATES, SIZES AND WEIGHTS
Crop     Usually off On the whole   Dates held Sizes held Cut of expected
kale     0.8 days    0.3 days later 4 of 4     1 of 4     7 kg of 6 kg
`);
    expect(text).toContain("same day 1.0 °C    1.0 °C warm 1.0 °C   1.0 °C cold 1");
  });
});

test("days off are told to a tenth", () => {
  expect([0, 0.04, 1, -1.04, 2.25].map((days) => later(days).replaceAll("\u00a0", " "))).toEqual([
    "on the day",
    "on the day",
    "1 day later",
    "1 day earlier",
    "2.3 days later",
  ]);
});

describe("score as data", () => {
  const data = JSON.parse(scoreJson(scored()));

  test("names itself, its version and its units, and holds every outcome", () => {
    expect(data).toMatchObject({
      leafpace: "score",
      version: 1,
      units: { clock: "America/New_York" },
      sheets: 1,
      verdict: { kind: "asSaid", inside: { hits: 9, count: 10 } },
      odds: { count: 10, brierOfMean: 0.25 },
      forecastsKept: 1,
    });
    expect(data.odds.brier).toBeCloseTo(0.126, 12);
    expect(
      [data.dates, data.sizes, data.weights, data.cuts, data.emergences].map(({ length }) => length),
    ).toEqual([10, 10, 6, 6, 1]);
    expect(data.dates[4]).toEqual({
      succession: "S05",
      crop: "arugula",
      sheet: { instant: "2026-04-20T11:00:00.000Z", clock: "2026-04-20 07:00" },
      projected: "2026-04-21",
      early: "2026-04-20",
      late: "2026-04-23",
      actual: "2026-04-24",
      offD: 3,
      inside: false,
      intervalScoreD: expect.closeTo(13, 9),
    });
  });

  test("is whole where nothing is known", () => {
    expect(JSON.parse(scoreJson(scored({ sheets: [], forecasts: [] })))).toMatchObject({
      sheets: 0,
      dates: [],
      odds: { brier: null, bins: [] },
      verdict: { kind: "tooEarly" },
    });
  });
});

/** `WRITE_GOLDEN=1 npx vitest run test/sheet` writes it anew, to be looked at before it is kept. */
const writing = process.env.WRITE_GOLDEN === "1" && process.env.CI === undefined;
const golden = fileURLToPath(new URL("../golden/score-sample.html", import.meta.url));

describe("score as a page", () => {
  const page = scoreHtml(scored());

  test("is byte for byte as it was looked at", () => {
    if (writing) writeFileSync(golden, page);
    expect(existsSync(golden), "test/golden/score-sample.html is missing").toBe(true);
    expect(page).toBe(readFileSync(golden, "utf8").replaceAll("\r\n", "\n"));
  });

  test("lets nothing run and asks for nothing", () => {
    expect(page).toContain(`content="default-src 'none'; style-src 'unsafe-inline'"`);
    expect(page).not.toMatch(/<script|href="http|src=|url\(|@import/u);
  });

  test("gives every picture a title and a description of its own, and says inside and outside in words too", () => {
    const pictures = [...page.matchAll(/<svg[^>]*aria-labelledby="(\S+) (\S+)">/gu)];
    expect(pictures).toHaveLength(11);
    for (const [, title, desc] of pictures) {
      expect(page.split(`<title id="${title}">`)).toHaveLength(2);
      expect(page.split(`<desc id="${desc}">`)).toHaveLength(2);
    }
    expect(page).toContain("was Fri\u00a0Apr\u00a024, 3\u00a0days later, outside it.</desc>");
    expect(page.match(/class="missed"/gu)).toHaveLength(1);
    expect(page.match(/<td data-label="Inside">no<\/td>/gu)).toHaveLength(1);
  });

  test.each([`</style><script>alert("1")</script>`, `"><img src=x onerror='alert(1)'>`, "<!-- "])(
    "escapes %s wherever a name can stand",
    (name) => {
      const { farm, sheets } = scoreInput();
      const hostile = scoreHtml(
        scored({
          farm: { ...farm, name, markets: farm.markets.map((market) => ({ ...market, name })) },
          sheets: sheets.map((sheet) => ({
            ...sheet,
            successions: sheet.successions.map((each) => ({ ...each, cropName: name })),
          })),
          problems: scoreInput().problems.map((problem) => ({ ...problem, expected: name, hint: name })),
        }),
      );
      expect(hostile).not.toContain(name);
      expect(hostile.split("<style>")).toHaveLength(3);
    },
  );
});
