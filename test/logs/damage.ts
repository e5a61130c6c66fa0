import type { Random } from "./random.ts";
import type { Table } from "./style.ts";

/** A damaged log: as cells or as text, and how many of its rows no longer say what was measured. */
export interface Damaged<Log> {
  readonly log: Log;
  readonly touched: number;
}

const replaced = <Value>(values: readonly Value[], index: number, value: Value): readonly Value[] =>
  values.map((old, i) => (i === index ? value : old));

const cut = (text: string, at: number, length: number, put: string): string =>
  text.slice(0, at) + put + text.slice(at + length);

/** Signs that turn up in broken files. None of them, put into a header, names another unit. */
const JUNK = ["#", "?", '"', "'", ";", ",", "\t", "|", "~", "\u0000", "\uFFFD", "<", "\n", "-", "%"] as const;

/** Damage to a text, each with what it is called. Every one touches few rows. */
export const TEXT_DAMAGE: Readonly<Record<string, (text: string, chosen: Random) => Damaged<string>>> = {
  "signs put in": (text, chosen) => {
    const count = 1 + chosen.below(3);
    let log = text;
    for (let i = 0; i < count; i++) log = cut(log, chosen.below(log.length + 1), 0, chosen.pick(JUNK));
    return { log, touched: 2 * count };
  },
  "signs replaced": (text, chosen) => {
    const count = 1 + chosen.below(3);
    let log = text;
    for (let i = 0; i < count; i++) log = cut(log, chosen.below(log.length), 1, chosen.pick(JUNK));
    return { log, touched: 2 * count };
  },
  "signs lost": (text, chosen) => {
    const count = 1 + chosen.below(3);
    let log = text;
    for (let i = 0; i < count; i++) log = cut(log, chosen.below(log.length), 1, "");
    return { log, touched: 2 * count };
  },
  "digits mistaken": (text, chosen) => {
    const places = [...text.matchAll(/\d/gu)].map(({ index }) => index);
    if (places.length === 0) return { log: text, touched: 0 };
    return { log: cut(text, chosen.pick(places), 1, chosen.pick(["O", "l", "0", "9", "1"])), touched: 1 };
  },
  "the end cut off": (text, chosen) => ({ log: text.slice(0, chosen.below(text.length)), touched: 1 }),
  "the beginning cut off": (text, chosen) => ({ log: text.slice(chosen.below(text.length)), touched: 1 }),
  "a piece lost": (text, chosen) => {
    const at = chosen.below(text.length);
    return { log: cut(text, at, chosen.below(60), ""), touched: 1 };
  },
  "a piece twice": (text, chosen) => {
    const at = chosen.below(text.length);
    return { log: cut(text, at, 0, text.slice(at, at + chosen.below(60))), touched: 2 };
  },
  "a quote opened": (text, chosen) => {
    const lines = text.split("\n");
    const index = chosen.below(lines.length);
    return { log: replaced(lines, index, `"${lines[index]!}`).join("\n"), touched: 1 };
  },
};

/** Damage to the table itself. The rows still say what was measured; what they say may no longer be told. */
export const TABLE_DAMAGE: Readonly<Record<string, (table: Table, chosen: Random) => Damaged<Table>>> = {
  "a column without its header": ({ header, ...rest }, chosen) => {
    const index = chosen.below(header.length);
    return { log: { ...rest, header: header.filter((_, i) => i !== index) }, touched: 0 };
  },
  "a header left blank": ({ header, ...rest }, chosen) => ({
    log: { ...rest, header: replaced(header, chosen.below(header.length), "") },
    touched: 0,
  }),
  "no header": ({ titles, rows }) => ({ log: { titles, header: rows[0]!, rows: rows.slice(1) }, touched: 0 }),
  "the unit left out": ({ titles, header, rows }) => {
    const bare = (text: string): string => text.replace(/[,([]?\s*(?:deg\s?|°)?[CF][)\]]?$/u, "").trim();
    const temperature = header.findIndex((name) => /temp/iu.test(name));
    return {
      log: {
        titles,
        header: replaced(header, temperature, bare(header[temperature]!)),
        rows: rows.map((row) => replaced(row, temperature, bare(row[temperature]!))),
      },
      touched: 0,
    };
  },
  "the header's unit unknown": ({ header, ...rest }) => ({
    log: { ...rest, header: header.map((name) => name.replace(/°[CF]|deg\s?[CF]/u, "units")) },
    touched: 0,
  }),
  "a second temperature": ({ titles, header, rows }) => {
    const temperature = header.findIndex((name) => /temp/iu.test(name));
    return {
      log: {
        titles,
        header: [...header, `${header[temperature]!} 2`],
        rows: rows.map((row, i) => [...row, String(100 + (i % 7))]),
      },
      touched: 0,
    };
  },
  "rows too short": ({ rows, ...rest }, chosen) => {
    const width = chosen.below(rows[0]!.length);
    return {
      log: { ...rest, rows: rows.map((row) => (chosen.chance(0.3) ? row.slice(0, width) : row)) },
      touched: 0,
    };
  },
  "a cell too many": ({ rows, ...rest }, chosen) => {
    const count = 1 + chosen.below(3);
    let log = rows;
    for (let i = 0; i < count; i++) {
      const index = chosen.below(log.length);
      const at = chosen.below(log[index]!.length + 1);
      log = replaced(log, index, [...log[index]!.slice(0, at), "7", ...log[index]!.slice(at)]);
    }
    return { log: { ...rest, rows: log }, touched: count };
  },
  "rows shuffled": ({ rows, ...rest }, chosen) => ({
    log: { ...rest, rows: chosen.shuffled(rows) },
    touched: 0,
  }),
  "rows lost": ({ rows, ...rest }, chosen) => ({
    log: { ...rest, rows: rows.filter(() => chosen.chance(0.6)) },
    touched: 0,
  }),
  "one date only": ({ rows, header, ...rest }) => {
    const moment = header.findIndex((name) => /dat|day|stamp/iu.test(name));
    const dateOf = (row: readonly string[]): string => row[moment]!.split(/[ T](?=\d{1,2}:)/u)[0]!;
    const last = dateOf(rows.at(-1)!);
    return { log: { ...rest, header, rows: rows.filter((row) => dateOf(row) === last) }, touched: 0 };
  },
  "the header again": ({ rows, header, ...rest }, chosen) => {
    const at = chosen.below(rows.length);
    return { log: { ...rest, header, rows: [...rows.slice(0, at), header, ...rows.slice(at)] }, touched: 0 };
  },
  "words for numbers": ({ rows, header, ...rest }, chosen) => {
    const temperature = header.findIndex((name) => /temp/iu.test(name));
    return {
      log: {
        ...rest,
        header,
        rows: rows.map((row) => (chosen.chance(0.4) ? replaced(row, temperature, "warm") : row)),
      },
      touched: 0,
    };
  },
};
