import type { Problem } from "../problem/index.ts";
import { type Instant, instant } from "../quantity/index.ts";
import { shown } from "./faults.ts";

/** One place in a JSON file. Every reading gives null, with a problem that names the place, when it is not as it must be. */
export interface Json {
  /** As properties.periods[3].temperature. */
  readonly path: string;
  /** Is there anything but null? */
  readonly given: boolean;
  /** Is it this very value? */
  is(value: boolean): boolean;
  at(name: string): Json;
  /** The entries of a list; none, with a problem, when it is no list or too long. */
  list(what: string): readonly Json[];
  number(what: string, low: number, high: number): number | null;
  text(what: string): string | null;
  /** An instant written with its offset from universal time. */
  time(what: string): Instant | null;
  /** Adds a problem about this place. */
  fault(code: string, expected: string, hint: string): null;
}

export interface JsonFile {
  readonly root: Json;
  /** Problems found so far, those of a kind shortened. */
  problems(): readonly Problem[];
}

/** How many problems of a kind are told one by one. */
const TOLD = 3;

/** No forecast has more entries: two weeks of hours are 336. */
const LONGEST = 2000;

const TIME = /^\d{4}-\d\d-\d\dT\d\d:\d\d(?::\d\d(?:\.\d+)?)?(?:Z|[+-]\d\d:?\d\d)$/u;

function received(value: unknown): string {
  if (value === undefined || value === null) return "nothing";
  if (Array.isArray(value)) return "a list";
  return typeof value === "object" ? "a group" : shown(String(value));
}

/** What to do about a text that is no JSON, and about one in which something is not as it must be. */
export interface JsonHints {
  readonly unreadable: string;
  readonly otherForm: string;
}

/** Opens a text as JSON and keeps, for everything in it, the path to it. */
export function jsonFile(file: string, text: string, { unreadable, otherForm }: JsonHints): JsonFile {
  const kinds = new Map<string, { readonly first: Problem[]; more: number }>();
  const add = (problem: Problem): null => {
    const path = String(problem.column ?? "");
    const key = `${problem.code} ${path.replace(/\[\d+\]/gu, "[]")}`;
    const kind = kinds.get(key) ?? { first: [], more: 0 };
    kinds.set(key, kind);
    if (kind.first.length < TOLD) kind.first.push(problem);
    else kind.more++;
    return null;
  };
  const place = (value: unknown, path: string): Json => {
    const fault = (code: string, expected: string, hint: string): null =>
      add({
        code,
        weight: "stops",
        file,
        line: null,
        column: path === "" ? null : path,
        expected,
        received: received(value),
        hint,
      });
    return {
      path,
      given: value !== undefined && value !== null,
      fault,
      is: (other) => value === other,
      at: (name) => {
        const there = typeof value === "object" && value !== null && Object.hasOwn(value, name);
        const inner = there ? (value as Record<string, unknown>)[name] : undefined;
        return place(inner, path === "" ? name : `${path}.${name}`);
      },
      list: (what) => {
        if (Array.isArray(value) && value.length <= LONGEST)
          return value.map((entry: unknown, index) => place(entry, `${path}[${index}]`));
        fault("json-list", Array.isArray(value) ? `at most ${LONGEST} entries` : what, otherForm);
        return [];
      },
      number: (what, low, high) =>
        typeof value === "number" && value >= low && value <= high
          ? value
          : fault("json-number", `${what} from ${low} to ${high}`.replaceAll("-", "−"), otherForm),
      text: (what) =>
        typeof value === "string" && value !== "" ? value : fault("json-text", what, otherForm),
      time: (what) => {
        const ms = typeof value === "string" && TIME.test(value) ? Date.parse(value) : Number.NaN;
        return Number.isNaN(ms)
          ? fault("json-time", `${what} like 2026-04-20T09:00:00Z`, otherForm)
          : instant(ms);
      },
    };
  };
  let content: unknown;
  try {
    content = JSON.parse(text.replace(/^\uFEFF/u, ""));
  } catch {
    add({
      code: "json-unreadable",
      weight: "stops",
      file,
      line: null,
      column: null,
      expected: "a whole JSON text",
      received: /^\s*</u.test(text) ? "a web page" : "a text that is none, or is cut off",
      hint: unreadable,
    });
  }
  return {
    root: place(content, ""),
    problems: () =>
      [...kinds.values()].flatMap(({ first, more }) =>
        more === 0
          ? first
          : first.map((problem, index) =>
              index < first.length - 1
                ? problem
                : { ...problem, hint: `And ${more} more like it. ${problem.hint}` },
            ),
      ),
  };
}
