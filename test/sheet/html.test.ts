import { beforeAll, describe, expect, test } from "vitest";
import type { Outcome } from "../../src/decide/index.ts";
import { html } from "../../src/sheet/html/tag.ts";
import { weekHtml } from "../../src/sheet/index.ts";
import { exampleWeek } from "./exampleWeek.ts";
import { metricSample, sample } from "./sample.ts";

describe("the template", () => {
  const told = (...values: Parameters<typeof html>[1][]): string => html`<p>${values}</p>`.toString();

  test("escapes every value, in text and in attributes", () => {
    const name = `<b onclick='x'>"&`;
    expect(html`<i title="${name}">${name}</i>`.toString()).toBe(
      '<i title="&lt;b onclick=&#39;x&#39;&gt;&quot;&amp;">&lt;b onclick=&#39;x&#39;&gt;&quot;&amp;</i>',
    );
  });

  test("leaves markup as it is, and prints lists, numbers and nothing", () => {
    expect(told(html`<b>${"<"}</b>`, ["a", 1], null, false)).toBe("<p><b>&lt;</b>a1</p>");
  });

  test("takes nothing for markup that only looks like it", () => {
    expect(() => told({ toString: () => "<script>" } as never)).toThrow(TypeError);
    expect(() => told(Object.create(Object.getPrototypeOf(html`x`)))).toThrow(TypeError);
  });

  test("sets what runs from right to left apart in text, and not in attributes", () => {
    expect(told("Bed גן 2 ירק, 3 lb")).toBe("<p>Bed <bdi>גן 2 ירק</bdi>, 3 lb</p>");
    expect(told("גן 12, גן (צפון) (S4)")).toBe("<p><bdi>גן 12</bdi>, <bdi>גן (צפון)</bdi> (S4)</p>");
    expect(told("lettuce (גן): ירק 12: C1")).toBe("<p>lettuce (<bdi>גן</bdi>): <bdi>ירק 12</bdi>: C1</p>");
    expect(html`<i title="${"גן"}">x</i>`.toString()).toBe('<i title="גן">x</i>');
  });
});

const VOID = new Set(["meta", "input", "br", "col", "!doctype"]);

/** Names of elements left open or closed out of turn; SVG elements may close themselves. */
function unbalanced(page: string): string[] {
  const open: string[] = [];
  const wrong: string[] = [];
  for (const [, close, name, end] of page.matchAll(/<(\/?)([!a-z][a-z0-9]*)\b[^>]*?(\/?)>/gu)) {
    if (close === "/") {
      const last = open.pop();
      if (last !== name) wrong.push(`</${name}> closes <${last}>`);
    } else if (end !== "/" && !VOID.has(name!)) open.push(name!);
  }
  return [...wrong, ...open];
}

const all = (page: string, pattern: RegExp): string[] =>
  [...page.matchAll(pattern)].map(([, found]) => found!);

const HOSTILE = [
  `</style><script>alert("1")</script>`,
  `"><img src=x onerror='alert(1)'>`,
  "&lt;b&gt; &amp; `{x}` {{x}} %s",
  "\u202eevil\u2066 \u0000\u001b[31m",
  "ערוגה גדולה 12, (צפון)",
  "W".repeat(4000),
];

/** The sample with one name in every place a name can stand. */
function named(name: string): Outcome {
  const plain = sample();
  const { farm } = plain;
  const market = { ...farm.markets[0]!, name };
  return sample(
    {
      name,
      markets: [market, ...farm.markets.slice(1)],
      products: farm.products.map((product) => ({ ...product, name })),
      tunnels: farm.tunnels.map((tunnel) => ({ ...tunnel, name })),
      covers: new Map([...farm.covers].map(([id, cover]) => [id, { ...cover, name }])),
      pieces: farm.pieces.map((piece) => ({ ...piece, id: name })),
    },
    {
      successions: plain.successions.map((outlook) => ({ ...outlook, crop: { ...outlook.crop, name } })),
      madeFrom: { ...plain.madeFrom, sensors: [name] },
      problems: plain.problems.map((problem) => ({ ...problem, expected: name, hint: name })),
    },
  );
}

describe("names that would break a page", () => {
  test.each(HOSTILE)("%#: leaves the page whole and runs nowhere", (name) => {
    const page = weekHtml(named(name));
    expect(unbalanced(page)).toEqual([]);
    expect(page).not.toMatch(/<(?:script|img|b onclick)/u);
    expect(all(page, /(<style)/gu)).toHaveLength(1);
    // biome-ignore lint/suspicious/noControlCharactersInRegex: the very characters that must not be there
    expect(page).not.toMatch(/[\u0000-\u0008\u000b-\u001f\u202a-\u202e\u2066-\u2069]/u);
    expect(page.match(/<[a-z][^>]*\son[a-z]+=/u)).toBeNull();
  });
});

let example: Outcome;
beforeAll(async () => {
  example = await exampleWeek();
});

describe.each<readonly [string, () => Outcome]>([
  ["the example farm", () => example],
  ["a farm in US units", sample],
  ["a farm in metric units", metricSample],
  ["a farm without weather", () => sample({}, { walks: [], warnings: [], tunnels: [], picks: [] })],
])("the page of %s", (_, outcome) => {
  test("is whole, in English, and asks for nothing from elsewhere", () => {
    const page = weekHtml(outcome());
    expect(unbalanced(page)).toEqual([]);
    expect(page.startsWith('<!doctype html>\n<html lang="en">')).toBe(true);
    expect(page).toContain(
      `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">`,
    );
    expect(page).not.toMatch(/<script|https?:|\bsrc=|@import|url\(|NaN|undefined|Infinity/u);
  });

  test("has one heading of the first rank, and none skips a rank", () => {
    const ranks = all(weekHtml(outcome()), /<h([1-6])\b/gu).map(Number);
    expect(ranks.filter((rank) => rank === 1)).toHaveLength(1);
    expect(ranks.filter((rank, i) => i > 0 && rank > ranks[i - 1]! + 1)).toEqual([]);
  });

  test("uses every id once, and points to none that is not there", () => {
    const page = weekHtml(outcome());
    const ids = all(page, /\sid="([^"]*)"/gu);
    expect(ids).toEqual([...new Set(ids)]);
    const pointed = all(page, /(?:href="#|aria-(?:labelledby|describedby)=")([^"]*)"/gu);
    expect(pointed.filter((id) => !ids.includes(id))).toEqual([]);
  });

  test("gives every picture words, every box a label and every heading of a table its scope", () => {
    const page = weekHtml(outcome());
    expect(all(page, /<svg ([^>]*)>/gu).filter((svg) => !/role="img" aria-label="[^"]+"/u.test(svg))).toEqual(
      [],
    );
    expect(all(page, /(<input)/gu)).toHaveLength(all(page, /<label class="tick">(<input)/gu).length);
    expect(all(page, /<th\b([^>]*)>/gu).filter((th) => !/scope="/u.test(th))).toEqual([]);
  });

  test("comes out the same every time", () => {
    expect(weekHtml(outcome())).toBe(weekHtml(outcome()));
  });
});

test("coordinates are told to a tenth", () => {
  const paths = all(weekHtml(example), /\sd="([^"]*)"/gu);
  expect(paths.length).toBeGreaterThan(100);
  expect(paths.filter((path) => /\.\d{2}/u.test(path))).toEqual([]);
});
