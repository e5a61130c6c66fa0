// What the corpus is made with: an invented series, the ways to write it down, and plain arithmetic for what
// an import must find in it. Nothing here knows the reader.

const MINUTE = 60_000;
const HOUR = 3_600_000;

export const two = (number) => String(number).padStart(2, "0");

/** A zone is a name like Europe/Berlin, or a number: minutes ahead of UTC. */
const formats = new Map();
function wallOf(zone, at) {
  if (typeof zone === "number") {
    const date = new Date(at + zone * MINUTE);
    return [
      date.getUTCFullYear(),
      date.getUTCMonth() + 1,
      date.getUTCDate(),
      date.getUTCHours(),
      date.getUTCMinutes(),
      date.getUTCSeconds(),
    ];
  }
  if (!formats.has(zone))
    formats.set(
      zone,
      new Intl.DateTimeFormat("en-US", {
        timeZone: zone,
        hourCycle: "h23",
        year: "numeric",
        month: "numeric",
        day: "numeric",
        hour: "numeric",
        minute: "numeric",
        second: "numeric",
      }),
    );
  const parts = Object.fromEntries(
    formats
      .get(zone)
      .formatToParts(at)
      .map(({ type, value }) => [type, Number(value)]),
  );
  return ["year", "month", "day", "hour", "minute", "second"].map((type) => parts[type]);
}

/** Minutes the clock is ahead of UTC. */
export function ahead(zone, at) {
  const [year, month, day, hour, minute, second] = wallOf(zone, at);
  return (Date.UTC(year, month - 1, day, hour, minute, second) - at) / MINUTE;
}

/** The moment a clock in the zone shows "2026-04-18T00:00"; the first of two. */
export function momentOf(zone, wall) {
  const shown = Date.parse(`${wall}Z`);
  const guesses = [ahead(zone, shown - 86_400_000), ahead(zone, shown + 86_400_000)].map(
    (minutes) => shown - minutes * MINUTE,
  );
  return guesses.find((at) => at + ahead(zone, at) * MINUTE === shown) ?? guesses[0];
}

const decimals = (value, places) => Number(value.toFixed(places));

/** Cold at 5, warm at 15, straight lines between, and a small jitter. */
function temperature(hour, index, low, high, places) {
  const warmth = hour < 5 ? (5 - hour) / 14 : hour < 15 ? (hour - 5) / 10 : (29 - hour) / 14;
  const jitter = (((index * 37) % 11) - 5) / 25;
  return decimals(low + (high - low) * warmth + jitter, places);
}

/**
 * Readings as an instrument takes them: evenly spaced in time, shown on the clock of a zone.
 * `every` in minutes; `low`, `high` in the unit the log is written in.
 */
export function series({ zone = NEW_YORK, from, every, rows, low = 4, high = 15, places = 1 }) {
  const start = momentOf(zone, from);
  return Array.from({ length: rows }, (_, index) => {
    const at = start + index * every * MINUTE;
    const [y, mo, d, h, mi, s] = wallOf(zone, at);
    const value = temperature(h + mi / 60 + s / 3600, index, low, high, places);
    return { at, index, y, mo, d, h, mi, s, value, text: value.toFixed(places) };
  });
}

/** A single reading written by hand: the clock of a zone, and the number as written. */
export function reading(zone, wall, value) {
  const at = momentOf(zone, wall);
  const [y, mo, d, h, mi, s] = wallOf(zone, at);
  return { at, index: 0, y, mo, d, h, mi, s, value, text: String(value) };
}

export const NEW_YORK = "America/New_York";

// Ways to write a reading's date, time and number.
export const ymd = ({ y, mo, d }) => `${y}-${two(mo)}-${two(d)}`;
export const dmy = ({ y, mo, d }, sign = ".") => [two(d), two(mo), y].join(sign);
export const mdy = ({ y, mo, d }, sign = "/") => [two(mo), two(d), y].join(sign);
export const hm = ({ h, mi }, sign = ":") => `${two(h)}${sign}${two(mi)}`;
export const hms = (r) => `${hm(r)}:${two(r.s)}`;
export const twelve = ({ h, mi }, am, pm) => `${h % 12 === 0 ? 12 : h % 12}:${two(mi)}${h < 12 ? am : pm}`;
export const comma = ({ text }) => text.replace(".", ",");
export const stamp = (r) => `${ymd(r)} ${hm(r)}`;

/** Lines of a text, each with a line end. */
export const lines = (...parts) =>
  parts
    .flat(2)
    .map((line) => `${line}\n`)
    .join("");

const CELSIUS = {
  C: (value) => value,
  F: (value) => ((value - 32) * 5) / 9,
  K: (value) => value - 273.15,
};

/** The hours a store must hold: [UTC hour, mean, count, lowest, highest], °C. */
export function hours(readings, unit = "C") {
  const found = new Map();
  for (const { at, value } of readings) {
    const hour = Math.floor(at / HOUR);
    if (!found.has(hour)) found.set(hour, []);
    found.get(hour).push(CELSIUS[unit](value));
  }
  return [...found]
    .sort(([a], [b]) => a - b)
    .map(([hour, values]) => [
      new Date(hour * HOUR).toISOString().slice(0, 13),
      decimals(values.reduce((sum, value) => sum + value, 0) / values.length, 2),
      values.length,
      decimals(Math.min(...values), 2),
      decimals(Math.max(...values), 2),
    ]);
}

/** Days a store must hold: [date, low, high], °C. */
export const days = (rows, unit = "C") =>
  rows.map(([date, low, high]) => [date, decimals(CELSIUS[unit](low), 2), decimals(CELSIUS[unit](high), 2)]);

/** Everything read, nothing dropped. */
export const all = (readings) => ({ rows: readings.length, used: readings.length });

/** A text in an encoding of one byte a character, by a table of what differs from plain ASCII. */
export function bytes(text, table) {
  return Buffer.from(
    [...text].map((character) => {
      const code = character.codePointAt(0);
      if (code < 128) return code;
      if (table[character] === undefined) throw new Error(`no byte for ${character}`);
      return table[character];
    }),
  );
}
