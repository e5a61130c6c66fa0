/** Order of the parts of a date. */
export type DateOrder = "ymd" | "mdy" | "dmy";

/** How one family of logs writes things. Data, so that another family needs no code. All words lower case. */
export interface Dialect {
  readonly name: string;
  /** Headers of a column that holds date and time together. */
  readonly dateTime: readonly string[];
  readonly date: readonly string[];
  readonly time: readonly string[];
  /** Words one of which a temperature column's header holds; and words that make it another one. */
  readonly temperature: readonly string[];
  readonly notTemperature: readonly string[];
  /** Spellings of the two units in headers and cells. */
  readonly fahrenheit: readonly string[];
  readonly celsius: readonly string[];
  /** Cells that stand for no reading. */
  readonly missing: readonly string[];
  readonly months: readonly string[];
  readonly separators: readonly string[];
  /** Lines above the header that may hold titles. */
  readonly titleLines: number;
}

/** What most loggers' exports have in common. */
export const PLAIN: Dialect = {
  name: "plain",
  dateTime: ["date/time", "date time", "datetime", "date & time", "date and time", "timestamp", "time stamp"],
  date: ["date", "day"],
  time: ["time", "clock", "time of day"],
  temperature: ["temperature", "temp", "temp.", "temps"],
  notTemperature: ["dew", "dewpoint", "heat index", "wet bulb", "wind chill", "battery", "feels"],
  fahrenheit: ["°f", "ºf", "° f", "℉", "deg f", "degf", "deg. f", "fahrenheit", "f"],
  celsius: ["°c", "ºc", "° c", "℃", "deg c", "degc", "deg. c", "celsius", "centigrade", "c"],
  missing: [
    "",
    "-",
    "--",
    "---",
    "na",
    "n/a",
    "nan",
    "null",
    "none",
    "no data",
    "missing",
    "err",
    "error",
    "ol",
    "-99.9",
    "-999",
    "-999.9",
    "-9999",
    "9999",
    "-32768",
  ],
  months: ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"],
  separators: [",", ";", "\t"],
  titleLines: 40,
};

/** A text without quotes, marks and doubled blanks, lower case: as headers are compared. */
export const plainWords = (text: string): string =>
  text
    .replace(/^\uFEFF/u, "")
    .toLowerCase()
    .replace(/[_"]+/gu, " ")
    .replace(/\s+/gu, " ")
    .trim();

/**
 * The unit of temperature a text names, or null when it names none or both.
 *
 * @example unitNamed("Temp (°F)", PLAIN) // => "F"
 */
export function unitNamed(text: string, dialect: Dialect): "C" | "F" | null {
  const words = ` ${plainWords(text)
    .replace(/[()[\],:;#]+/gu, " ")
    .replace(/\s+/gu, " ")
    .trim()} `;
  const has = (spellings: readonly string[]): boolean =>
    spellings.some(
      (spelling) =>
        words.includes(` ${spelling} `) || (spelling.length > 1 && words.includes(`${spelling} `)),
    );
  const fahrenheit = has(dialect.fahrenheit);
  const celsius = has(dialect.celsius);
  return fahrenheit === celsius ? null : fahrenheit ? "F" : "C";
}

/**
 * The separator that cuts most of a file's first lines into equally many cells; a comma when none cuts any.
 * Remarks do not count, nor does a last line the sample may have cut off.
 *
 * @example separatorOf("a;b;c\n1,5;2;3\n", PLAIN) // => ";"
 */
export function separatorOf(sample: string, dialect: Dialect): string {
  const all = sample.split(/\r\n|\n|\r/u);
  const lines = (all.length > 1 ? all.slice(0, -1) : all)
    .filter((line) => line.trim() !== "" && !line.startsWith("#"))
    .slice(-200);
  const score = (separator: string): number => {
    const counts = new Map<number, number>();
    for (const line of lines) {
      const cells = line.replace(/"[^"]*"/gu, "").split(separator).length;
      if (cells > 1) counts.set(cells, (counts.get(cells) ?? 0) + 1);
    }
    return Math.max(0, ...counts.values());
  };
  const ranked = dialect.separators
    .map((separator) => ({ separator, lines: score(separator) }))
    .sort((a, b) => b.lines - a.lines);
  const best = ranked[0]!;
  if (best.lines === 0) return ",";
  const rivals = ranked.filter(({ lines: agreeing }) => agreeing === best.lines);
  // A comma may be a decimal comma; any other separator that does as well is the real one.
  return (rivals.find(({ separator }) => separator !== ",") ?? best).separator;
}
