import { describe, expect, test } from "vitest";
import type { Outcome } from "../../src/decide/index.ts";
import { fahrenheit, inches, kilogram, type LocalDate } from "../../src/quantity/index.ts";
import type { Beds } from "../../src/sheet/index.ts";
import { bedsText, sheetOf, weekText } from "../../src/sheet/index.ts";
import { displayWidth } from "../../src/sheet/wrap.ts";
import type { Warning } from "../../src/watch/index.ts";
import { exampleWeek } from "./exampleWeek.ts";
import { metricSample, plannedAround, sample } from "./sample.ts";

const PLAIN = { width: 80, unicode: true, color: false } as const;
const linesOf = (text: string): string[] => text.split("\n");
/** A text with its lines joined, so that a sentence is found wherever it was broken. */
const joined = (text: string): string => text.replace(/\s+/gu, " ");
const told = (outcome: Outcome, width = 80): string => joined(weekText(outcome, { ...PLAIN, width }));

const CONTROL = /[\p{Cc}\u200b\u200e\u200f\u2028-\u202e\u2066-\u2069]/u;
const ODD =
  "\u001b[31mRed\u001b[0m\u0007 \u202Eevil\u2066 \u009b2Jtab\there\n[]9\u001b]0;title\u0007 新しい🥬畑 é";
const odd = (): Outcome => {
  const { farm } = sample();
  return sample({
    name: ODD,
    tunnels: farm.tunnels.map((tunnel, i) =>
      i === 0 ? { ...tunnel, name: `${ODD} ${"long".repeat(60)}` } : tunnel,
    ),
    markets: farm.markets.map((market) => ({ ...market, name: ODD })),
    products: farm.products.map((product) => ({ ...product, name: ODD })),
    covers: new Map([...farm.covers].map(([id, cover]) => [id, { ...cover, name: `${cover.name} ${ODD}` }])),
  });
};
const without = (): Outcome =>
  sample(
    {},
    {
      walks: [],
      weather: [],
      warnings: [],
      tunnels: [],
      successions: [],
      picks: [],
      products: [],
      madeFrom: {
        sensors: [],
        latest: null,
        tunnels: [],
        gaps: [],
        doubtful: [],
        forecastIssued: null,
        forecastEnds: null,
        unforeseenFrom: null,
        carriedFrom: null,
        usualFrom: null,
        usualBehind: false,
        learnedFrom: 0,
        members: 0,
        broughtOver: [],
        shortDays: null,
      },
    },
  );

const CASES: readonly (readonly [string, () => Outcome])[] = [
  ["US", sample],
  ["metric", metricSample],
  ["odd names", odd],
  ["no weather at all", without],
];

describe.each(CASES)("the sheet of a farm: %s", (_, outcome) => {
  test.each([60, 61, 75, 76, 80, 109, 110, 120, 200])("fits %i columns", (width) => {
    for (const unicode of [true, false]) {
      const text = weekText(outcome(), { width, unicode, color: false });
      const beds = bedsText(outcome() satisfies Beds, { width, unicode, color: false });
      for (const line of [...linesOf(text), ...linesOf(beds)])
        expect(displayWidth(line), line).toBeLessThanOrEqual(width);
    }
  });

  test("has nothing beyond ASCII without Unicode", () => {
    for (const width of [60, 80, 200]) {
      expect(weekText(outcome(), { width, unicode: false, color: false })).toMatch(/^[\n -~]*$/);
      expect(bedsText(outcome(), { width, unicode: false, color: false })).toMatch(/^[\n -~]*$/);
    }
  });

  test("has no control character but the newline, and no space at the end of a line", () => {
    for (const line of linesOf(weekText(outcome(), PLAIN))) {
      expect(line).not.toMatch(CONTROL);
      expect(line).toBe(line.trimEnd());
    }
  });

  test("says the same with colour as without", () => {
    const plain = weekText(outcome(), PLAIN);
    const colored = weekText(outcome(), { ...PLAIN, color: true });
    const off = new RegExp(`${String.fromCharCode(27)}\\[[0-9;]*m`, "g");
    expect(colored).not.toBe(plain);
    expect(colored.replace(off, "")).toBe(plain);
  });
});

describe("the sheet says", () => {
  test("frost first, with what is expected and what is promised", () => {
    const text = told(sample());
    expect(text).toContain(
      "DANGER: Frost in the night from Wed Apr 22 to Thu: down to 26 °F at the crop with nothing on.",
    );
    expect(text.indexOf("DANGER: Frost")).toBeLessThan(text.indexOf("TODAY"));
    expect(text).toContain("North 1 row cover 30 g 29 °F 27 °F 28 °F 1 in 5");
    expect(text).toContain("Leaves probably marked even with the plan: mustard (M3) in North 2 (3 in 5).");
    expect(told(sample(), 60)).toContain(
      "North 1, row cover 30 g: 29 °F expected at the crop, 27 °F promised. Leaves of arugula (A12) and spinach (S4) are unfit below 28 °F. Risk left: 1 in 5.",
    );
  });

  test("that a cloth cannot promise what it is expected to do", () => {
    const outcome = sample();
    const warnings = outcome.warnings.map((warning) =>
      warning.kind === "frost" ? { ...warning, risk: 0.001, windy: true } : warning,
    );
    const text = told(sample({}, { warnings }));
    expect(text).toContain("North 2 and North 1 should come through, but what is on cannot promise it.");
    expect(text).toContain(
      "That evening is too windy to put cloth on: what is to help must lie there from an earlier walk.",
    );
  });

  test("further nights of little risk together", () => {
    const { warnings } = sample();
    const care = warnings.flatMap((warning) =>
      warning.kind === "frost" && warning.tunnel === "n1" ? [{ ...warning, severity: "care" as const }] : [],
    );
    const more = ["2026-04-23", "2026-04-24"].flatMap((date) =>
      care.map((warning) => ({ ...warning, date: date as LocalDate, bare: fahrenheit(31), risk: 0.1 })),
    );
    expect(told(sample({}, { warnings: [...warnings, ...more] }))).toContain(
      "CARE: More frost in the nights that begin on Thu Apr 23 and Fri Apr 24: down to 31 °F at the crop with nothing on. Some risk is left: 1 in 10 in North 1.",
    );
  });

  test("several days of heat together", () => {
    const { warnings } = sample();
    const more = warnings.flatMap((warning) =>
      warning.kind === "heat"
        ? [{ ...warning, date: "2026-04-21" as LocalDate, ifLeft: fahrenheit(99) }]
        : [],
    );
    expect(told(sample({}, { warnings: [...warnings, ...more] }))).toContain(
      "CARE: Heat on Mon Apr 20 and Tue Apr 21: up to 99 °F at the crop in calm air if what lies there now is left on.",
    );
  });

  test("heat, and that the plan keeps it off", () => {
    expect(told(sample())).toContain(
      "CARE: Heat on Mon Apr 20: up to 96 °F at the crop in calm air if what lies there now is left on. With the plan no crop gets too hot.",
    );
  });

  test("wind with the limit", () => {
    expect(told(sample())).toContain(
      "CARE: Wind on Fri Apr 24: 18 mph, above the 15 mph up to which cloth may be put on.",
    );
  });

  test("bolting after the plan, and that covers do not prevent it", () => {
    const text = told(sample());
    const sentence = "The day is 13.5 hours long on Mon Apr 20: arugula (A12) may bolt, covered or not.";
    expect(text).toContain(sentence);
    expect(text.indexOf(sentence)).toBeGreaterThan(text.indexOf("PICKS"));
  });

  test("whether a planting or only its leaves are lost, by what kills it", () => {
    const kill = fahrenheit(27);
    const warnings = sample().warnings.map((warning) =>
      warning.kind === "frost"
        ? { ...warning, kill, beds: warning.beds.map((bed) => ({ ...bed, kill })) }
        : warning,
    );
    expect(told(sample({}, { warnings }))).toContain(
      "Probably lost even with the plan: mustard (M3) in North 2 (3 in 5).",
    );
  });

  test("each bed's own risk, and that of a bed cut before the night only the regrowth is meant", () => {
    const kill = fahrenheit(27);
    const bed = (succession: string, risk: number, of: "leaves" | "stubble" = "leaves") => ({
      succession,
      of,
      kill,
      risk,
    });
    const beds = [bed("A12", 0.41), bed("S4", 0.9), bed("K2", 0.9), bed("L7", 0.9, "stubble")];
    const warnings = sample().warnings.flatMap((warning): readonly Warning[] =>
      warning.kind !== "frost"
        ? [warning]
        : warning.tunnel === "n1"
          ? [{ ...warning, expected: kill, risk: 0.9, beds }]
          : warning.tunnel === "s1"
            ? [{ ...warning, unfit: fahrenheit(22), risk: 0.2, beds: [bed("L7", 0.2, "stubble")] }]
            : [],
    );
    const text = told(sample({}, { warnings }));
    expect(text).toContain(
      "Probably lost even with the plan: spinach (S4) and kale (K2) in North 1 (9 in 10); the regrowth of the lettuce mix (L7) in North 1 (9 in 10). Also at risk: arugula (A12) in North 1 (2 in 5).",
    );
    expect(text).toContain("South 1 row cover 30 g 30 °F 28 °F 22 °F 1 in 5 (regrowth)");
    const narrow = told(sample({}, { warnings }), 60);
    expect(narrow).toContain(
      "Leaves of arugula (A12), spinach (S4) and kale (K2) are unfit below 28 °F. The regrowth of the lettuce mix (L7) dies below 27 °F. Risk left: 9 in 10.",
    );
    expect(narrow).toContain(
      "South 1 (regrowth), row cover 30 g: 30 °F expected at the crop, 28 °F promised. The regrowth of the lettuce mix (L7) dies below 27 °F.",
    );
  });

  test("that some risk is left only while it is below 2 in 5", () => {
    const { warnings } = sample();
    const later = warnings.flatMap((warning) =>
      warning.kind === "frost" && warning.tunnel === "n1"
        ? [{ ...warning, severity: "care" as const, date: "2026-04-23" as LocalDate }]
        : [],
    );
    const withRisk = (risk: number): string =>
      told(sample({}, { warnings: [...warnings, ...later.map((warning) => ({ ...warning, risk }))] }));
    expect(withRisk(0.29)).toContain("Some risk is left: 1 in 5 in North 1.");
    expect(withRisk(0.3)).toContain("nothing on. Risk is left: 2 in 5 in North 1.");
  });

  test("what the columns of a frost mean, where there is one", () => {
    const meaning = "Promised: what the cloth can be relied on for; light cloth on a clear night: nothing.";
    expect(told(sample())).toContain(meaning);
    expect(told(sample({}, { warnings: [] }))).not.toContain(meaning);
  });

  test("that nothing harmful is foreseen, as far as the forecast goes", () => {
    const { tunnels } = sample();
    const mild = tunnels.map((plan) => ({ ...plan, nights: [] }));
    expect(told(sample({}, { warnings: [], tunnels: mild }))).toContain(
      "No frost and no harmful heat in these days, as far as the forecast goes.",
    );
  });

  test("frost that harms nothing the plan leaves standing, instead of saying there is none", () => {
    const text = told(sample({}, { warnings: [] }));
    expect(text).toContain(
      "CARE: Frost in the night from Wed Apr 22 to Thu: down to 26 °F at the crop with nothing on. Make the cuts planned before it; what stays should come through.",
    );
    expect(text).not.toContain("No frost");
  });

  test.each([null, "2026-04-19" as LocalDate])(
    "first of all that no forecast reaches these days, and no all-clear: it ends %s",
    (forecastEnds) => {
      const madeFrom = { ...sample().madeFrom, forecastEnds, unforeseenFrom: "2026-04-20" as LocalDate };
      const sentence =
        "CARE: No forecast reaches these days, so frost and heat are told only as the last days had them. Import a forecast.";
      const calm = told(sample({}, { warnings: [], madeFrom }));
      expect(calm).toContain(sentence);
      expect(calm).not.toContain("No frost");
      const cold = told(sample({}, { madeFrom }));
      expect(cold.indexOf(sentence)).toBeGreaterThan(0);
      expect(cold.indexOf(sentence)).toBeLessThan(cold.indexOf("DANGER"));
    },
  );

  test("what is cut, first at the walk it belongs to", () => {
    const text = told(sample());
    expect(text).toContain(
      "Fri Apr 24, morning, 7 am: about 12 min with covers, 60 min of cutting [ ] 6 am: cut the arugula (A12) in North 1, 24 lb, for Sat Apr 25. [ ] 6 am: cut the mustard (M3) in North 2, ~9 lb, for Sat Apr 25. ! Wind 18 mph",
    );
    expect(text.match(/\[ \] (?:\S+ am: c|C)ut the/gu)).toHaveLength(3);
  });

  test("a walk at which something is only cut", () => {
    const { tunnels, successions, walks } = sample();
    const idle = tunnels.map((plan) => ({ ...plan, changes: [], choice: plan.choice.map(() => 0) }));
    const cut = walks[2]!.at;
    const held = successions.map((outlook) =>
      outlook.fate.kind === "hold"
        ? { ...outlook, fate: { ...outlook.fate, cut, as: "braising" as const } }
        : outlook,
    );
    const text = told(sample({}, { tunnels: idle, successions: held }));
    expect(text).toContain(
      "WALK BY WALK Tue Apr 21, morning, 7 am: about 30 min of cutting [ ] Cut the spinach (S4) in North 1 as braising or bunched greens, 15 lb; keep it cold for Sat Apr 25.",
    );
    expect(text).toContain("[ ] spinach (S4) North 1 4½ in 15 lb Cut Tue Apr 21");
  });

  test("what to do at the next walk, with cloth, minutes and reason", () => {
    const text = told(sample());
    expect(text).toContain(
      "Mon Apr 20, morning, 7 am: about 27 min with covers, 30 min of cutting [ ] Cut the spinach (S4) in North 1, 15 lb; keep it cold for Sat Apr 25. Carry shade cloth 40 %: C1 (60 ft)",
    );
    expect(text).toContain(
      "[ ] North 1: Put on shade cloth 40 %. Use C1 (60 ft). (18 min) Why: Holds back the arugula (A12): 4½ in on Fri Apr 24 instead of 5 in; odds of salad size 4 in 5 instead of 3 in 5. Worth $59 in all.",
    );
    expect(text).toContain(
      "[ ] South 1: Take off row cover 30 g: from now on it goes on every evening and comes off every morning. (9 min) Why: Heat on Mon Apr 20: 96 °F at the crop if left as it is, 75 °F with the plan. Too hot: it would grow slower, not faster.",
    );
    expect(text).toContain("[ ] South 1: Put on row cover 30 g for the night. (6 min)");
  });

  test("why a cover goes on before a frost", () => {
    expect(told(sample())).toContain(
      "Why: Frost Wed night: 26 °F at the crop if bare, 29 °F expected with it. Risk of damage to the spinach (S4): 1 in 20 instead of 3 in 5. Worth $109 in all. Row cover 30 g instead: worth $12 less.",
    );
  });

  test("what several tunnels have a cover for once, before them, and what is each one's own with it", async () => {
    const text = told(await exampleWeek());
    expect(text).toContain(
      "Why, the next 5: Frost Thu night: 28 °F at the crop if bare, 30 °F expected with it. [ ] Creek 1: Put on row cover 19 g. Use light-60 (60 ft). (15 min) Worth $5 in all. [ ] Creek 2:",
    );
  });

  test("wind and ice at the walk they hold for", () => {
    const text = told(sample());
    expect(text).toContain("Frozen cloth tears: wait until it has thawed before you move it.");
    expect(text).toContain("! Wind 18 mph: put no cloth on at this walk.");
  });

  test("rounds of several tunnels in one line", () => {
    expect(told(sample())).toContain(
      "[ ] North 1 and South 1: Put on row cover 30 g for the night. (12 min)",
    );
  });

  test("tunnels that stay as they are in one line", () => {
    expect(told(sample())).toContain("North 2: leave it as it is all these days (insect net on).");
  });

  test("what the plan comes to", () => {
    const text = told(sample());
    expect(text).toContain("5 changes on 2 tunnels, about 64 min of work besides the daily rounds.");
    expect(text).toContain(
      "Worth $178 more than leaving everything as it is: size and weight $56, heat stress $20, feared damage $128 (counted 3 times for caution), work −$26.",
    );
  });

  test("pounds expected, ordered and short", () => {
    const text = told(sample());
    expect(text).toContain("Fri Apr 24, 6 am, for Saturday stall on Sat Apr 25");
    expect(text).toContain("Spicy mix: 33 lb expected, 40 lb ordered: 7 lb short.");
    expect(text).toContain("Spinach: 7½ lb expected, none ordered.");
    expect(text).toContain("[ ] mustard (M3) North 2 ~3½ in 4 in 5 ~9 lb");
  });

  test("which part of a mix is missing", () => {
    const { products, successions } = sample();
    const none = successions.map((outlook) =>
      outlook.crop.id === "arugula" ? { ...outlook, fate: { kind: "none" as const }, atFate: null } : outlook,
    );
    const short = products.map((each) => ({ ...each, expected: kilogram(0) }));
    expect(told(sample({}, { products: short, successions: none }))).toContain(
      "Spicy mix: nothing for the 40 lb ordered (no arugula).",
    );
  });

  test("a size beside its limit as just over it", () => {
    const successions = sample().successions.map((outlook) =>
      outlook.miss?.why === "tooLarge"
        ? {
            ...outlook,
            atPicks: outlook.atPicks.map((at) => ({
              ...at,
              planned: { low: inches(4.5), middle: inches(5.1), high: inches(5.8) },
            })),
          }
        : outlook,
    );
    expect(told(sample({}, { successions }))).toContain("just over 5 in by then; salad size ends at 5 in.");
  });

  test("a hold with its day", () => {
    expect(told(sample(), 60)).toContain(
      "[ ] Spinach (S4), North 1: 4½ in (4–5), odds 4 in 5, 15 lb. Cut Mon Apr 20, keep cold 4 days.",
    );
  });

  test("a miss, that covers cannot help, and the ways out best first", () => {
    const text = told(sample());
    expect(text).toContain(
      "Spinach (S4) in North 1 is too large on Fri Apr 24 for Saturday stall: 6 in by then; salad size ends at 5 in. No cover at hand holds it that long. With covers, salad size from Apr 14 at the earliest and Apr 15 at the latest: right for no market in sight. 1. Cut it Mon Apr 20 and keep it cold 4 days for Saturday stall on Sat Apr 25. That is the plan. Worth $152, up to $46 of it by a later cut, by judgement. Kept at 32 to 36 °F it loses about 19 % of its quality. 2. Pick it Fri Apr 24 as braising or bunched greens for Saturday stall on Sat Apr 25. Worth $124, the later cut counted. -",
    );
    expect(text).toContain(
      "Lettuce mix (L7) in South 1 is too small on Fri Apr 24 for Saturday stall: 2½ in by then; salad size begins at 3 in. No cover at hand brings it there in time. With covers, salad size from Apr 26 at the earliest: right for no market in sight. 1. Leave it uncut. That is the plan. 2. Leave it and pick it Wed Apr 29 for Wednesday kitchen the same day. Worth $130. 3. Clear it and sow anew. By judgement worth $70. The bed is free about 9 days sooner.",
    );
  });

  test("once for a tunnel that covers cannot help it, however many of its beds miss", () => {
    const outcome = sample();
    const missed = outcome.successions.find(({ succession }) => succession.id === "L7")!.miss;
    const successions = outcome.successions.map((outlook) =>
      outlook.succession.tunnel === "s1" ? { ...outlook, miss: missed } : outlook,
    );
    const tunnels = outcome.tunnels.map((plan) => ({ ...plan, changes: [] }));
    const text = told({ ...outcome, successions, tunnels });
    const both = text.slice(text.indexOf("Lettuce mix (L7) in South 1"));
    expect(both.match(/No cover at hand brings it there in time\./gu)).toHaveLength(2);
    expect(both.match(/So nothing is changed on its tunnel\./gu)).toHaveLength(1);
  });

  test("each way out against the plan where the farm is planned anew around it", () => {
    const text = told(plannedAround());
    expect(text).toContain(
      "Spinach (S4) in North 1 is too large on Fri Apr 24 for Saturday stall: 6 in by then; salad size ends at 5 in. No cover at hand holds it that long. With covers, salad size from Apr 14 at the earliest and Apr 15 at the latest: right for no market in sight. 1. Cut it Mon Apr 20 and keep it cold 4 days for Saturday stall on Sat Apr 25. That is the plan. Kept at 32 to 36 °F it loses about 19 % of its quality. 2. Pick it Fri Apr 24 as braising or bunched greens for Saturday stall on Sat Apr 25. $68 less than the plan. 3. Leave it uncut. $152 less than the plan. -",
    );
    expect(text).toContain(
      "Lettuce mix (L7) in South 1 is too small on Fri Apr 24 for Saturday stall: 2½ in by then; salad size begins at 3 in. No cover at hand brings it there in time. With covers, salad size from Apr 26 at the earliest: right for no market in sight. 1. Leave it uncut. That is the plan. 2. Leave it and pick it Wed Apr 29 for Wednesday kitchen the same day. As good as the plan. 3. Pick it Fri Apr 24, below salad size, for Saturday stall on Sat Apr 25. $118 less than the plan.",
    );
  });

  test("where those stand that neither a pick nor a miss tells of, in columns and in sentences", () => {
    const { successions } = sample();
    const growing = sample(
      {},
      { successions: successions.map((each) => ({ ...each, fate: { kind: "none" }, miss: null })) },
    );
    expect(told(growing)).toContain(
      "mustard (M3) ~2½ in ~3½ in ~3½ in 4 in 5 ~Thu Apr 23 Let it grow. North 2, 3–5 in 2–3 3–4½ 3–4½ ~Apr 21–25",
    );
    expect(told(growing, 60)).toContain(
      "Lettuce mix (L7), South 1: 1¾ in (1¼–2) now. On Fri Apr 24 2½ in (2–3) with the plan, 2½ in (2–3) left as it is; odds 1 in 10. Salad size (3–5 in) comes with covers late Apr at the earliest. With the plan in 4 of 5 cases Apr 25 or later. Let it grow.",
    );
    expect(told(sample(), 60)).toContain("Kale (K2), South 1: comes up about Thu Apr 23.");
    expect(told(sample(), 60)).not.toContain("mustard (M3), North 2: ~2½ in");
  });

  test("what it was made from and how old that is", () => {
    const text = told(sample());
    expect(text).toContain("Temperature log (north post) up to Mon Apr 20, 5:15 am, under an hour old.");
    expect(text).toContain("The log has gaps: Sun Apr 12, 2 am to 9 am, filled from the hours beside it.");
    expect(text).toContain("Forecast issued Sun Apr 19, 6:30 pm, 11 hours old; it ends with Thu Apr 23.");
    expect(text).toContain(
      "From Fri Apr 24 on the last known days are carried on: take those dates as rough.",
    );
  });

  test("what needs the grower, in the words of every problem", () => {
    const text = told(sample());
    expect(text).toContain('One thing needs you: see "Needs you" below.');
    expect(text).toContain(
      "NEEDS YOU - forecasts: expected a forecast up to Fri Apr 24, received one that ends Thu Apr 23. Import a newer one with leafpace import.",
    );
  });

  test("what the marks mean, and the cautions", () => {
    const text = told(sample());
    expect(text).toContain(
      '"~" before a size, date or weight: rough, by judgement only or mostly without a log. Measure one leaf and the mark goes.',
    );
    expect(text).toContain("Frost: no forecast and no cover guarantees against it.");
    expect(text).toContain("These and licensed practice come before this sheet.");
  });

  test("in metres and degrees Celsius what a farm reads in them", () => {
    const text = told(metricSample(), 60);
    expect(text).toContain(
      "Frost in the night from Wed 22 Apr to Thu: down to −3.5 °C at the crop with nothing on.",
    );
    expect(text).toContain("Use C1 (18.5 m).");
    expect(text).toContain("Arugula (A12), North 1: 11 cm (10–12), odds 4 in 5, 11 kg.");
    expect(text).toContain("row cover 30 g");
    expect(text).not.toMatch(/°F|\boz\b|\blb\b|\bft\b| am\b|\bmph\b/);
  });

  test("that no plan can be made without any weather", () => {
    const text = told(without());
    expect(text).toContain("No plan can be made: no weather is known, neither a log nor a forecast.");
    expect(text).not.toContain("Nothing to change");
  });

  test("that leaving everything is best, where it is", () => {
    const tunnels = sample().tunnels.map((plan) => ({
      ...plan,
      changes: [],
      choice: plan.choice.map(() => 0),
    }));
    expect(told(sample({}, { tunnels }))).toContain(
      "Nothing to change: no change that can be made is worth its work.",
    );
  });

  test.each([
    [
      "rowCoverInHeat",
      "a cloth stays on in heat, because at no walk before it the cloth may be moved: it is frozen, you keep it there, or your minutes or changes a week are used up.",
    ],
    [
      "wind",
      "cloth is put on in wind above your limit: at every other walk in time it is as windy, you keep the tunnel as it is, or your minutes or changes a week are used up.",
    ],
    [
      "frozen",
      "cloth has to be moved while frozen: at every other walk in time it is frozen too, you keep the tunnel as it is, or your minutes or changes a week are used up. Thaw it first if you can.",
    ],
  ] as const)(
    "what may leave no other walk where %s gives way, the grower's own word among it",
    (limit, why) => {
      const tunnels = sample().tunnels.map((plan) => ({ ...plan, gaveWay: [limit] }));
      expect(told(sample({}, { tunnels, warnings: [] }))).toContain(`North 1: ${why}`);
    },
  );

  test("which limits the plan cannot keep", () => {
    const tunnels = sample().tunnels.map((plan) => ({ ...plan, gaveWay: ["dim" as const] }));
    expect(told(sample({}, { tunnels }))).toContain(
      "North 1: shade cloth keeps it below its light floor longer than your settings allow.",
    );
  });
});

test("names with commands, controls and marks of direction come out as plain names", () => {
  const text = weekText(odd(), { ...PLAIN, width: 200 });
  expect(linesOf(text)[0]).toMatch(/^Red evil tab here \[\]9 新しい🥬畑 é, Mon Apr 20 to Fri Apr 24, 2026$/);
});

test("the sheet is the same each time, and plain data", () => {
  expect(sheetOf(sample())).toEqual(sheetOf(sample()));
  expect(JSON.parse(JSON.stringify(sheetOf(sample())))).toEqual(sheetOf(sample()));
});

test("colour marks danger in bold red and never stands alone", () => {
  const line = linesOf(weekText(sample(), { ...PLAIN, color: true })).find((each) =>
    each.includes("Frost in"),
  );
  expect(line).toContain(`${String.fromCharCode(27)}[1;31mDANGER: Frost`);
});

test("where beds stand is told without a plan", () => {
  const text = joined(bedsText(sample(), PLAIN));
  expect(text).toContain(
    "Two Oaks: where every succession stands On Mon Apr 20, 5:30 am, if nothing is changed.",
  );
  expect(text).toContain("arugula (A12) 3 in 5 in 3 in 5 since 5 days");
  expect(text).not.toContain("With the plan");
});
