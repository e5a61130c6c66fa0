import { isMap, isScalar, isSeq, LineCounter, type Node, parseDocument } from "yaml";
import { didYouMean, type Problem } from "../problem/index.ts";
import { type OtherUnits, parseQuantity, type QuantityKind, type QuantityOf } from "../quantity/index.ts";
import { quantityProblem, quantityWords, type Spot, shown, unknownName } from "./faults.ts";
import { parseClock } from "./moment.ts";

/** One setting in a settings file. Every reading gives null, with a problem added, when the value is not as it must be. */
export interface Setting {
  readonly path: string;
  readonly spot: Spot;
  /** How it is written. */
  readonly form: "value" | "list" | "group";
  /** Adds a problem about this setting. */
  fault(code: string, expected: string, hint: string): null;
  /** The settings under this one. `known`: names it may hold; null: any name. */
  settings(known: readonly string[] | null): SettingGroup | null;
  /** The entries of a list. */
  list(): readonly Setting[];
  text(what: string): string | null;
  /** A plain number within bounds, both allowed; `whole`: without decimals. */
  number(what: string, low: number, high: number, whole?: "whole"): number | null;
  /** Hours since midnight. */
  clock(): number | null;
  oneOf<Word extends string>(words: readonly Word[]): Word | null;
  quantity<Kind extends QuantityKind>(kind: Kind): QuantityOf[Kind] | null;
  /** A quantity that is not below zero. */
  amount<Kind extends QuantityKind>(kind: Kind): QuantityOf[Kind] | null;
  /** A share from nothing to `most`. [1] */
  share(most: number): number | null;
}

export interface SettingGroup {
  /** null when it is not there or empty. */
  get(name: string): Setting | null;
  /** As get, but a missing one is a problem. */
  need(name: string, what: string): Setting | null;
  readonly names: readonly string[];
}

export interface SettingFile {
  readonly root: Setting;
  readonly problems: Problem[];
}

interface Slip {
  readonly expected: string;
  readonly received: string;
  readonly hint?: string;
}

const BRACE: Slip = {
  expected: "a closing } or ] before this line",
  received: "none",
  hint: "Close what the lines above open with { or [.",
};

/** The parser's codes in a grower's words. */
const UNREADABLE: Readonly<Record<string, Slip>> = {
  TAB_AS_INDENT: { expected: "blanks before a setting", received: "a tab" },
  DUPLICATE_KEY: { expected: "each setting once", received: "the same setting again" },
  BAD_INDENT: {
    expected: "settings that belong together to begin in the same column",
    received: "another column",
    hint: "Put as many blanks before it as before the setting above.",
  },
  MISSING_CHAR: {
    expected: "a closing quote",
    received: "none",
    hint: "Write the second quote behind the text.",
  },
  MULTILINE_IMPLICIT_KEY: { expected: "a name, a colon and a value", received: "a name over several lines" },
};

/** Where one code of the parser stands for two slips, its message tells which. */
function slipOf(code: string, message: string): Slip | undefined {
  if (/end with a [}\]]/u.test(message)) return BRACE;
  if (/without - indicator/u.test(message)) return UNREADABLE.BAD_INDENT;
  return UNREADABLE[code];
}

/** Reads a settings file and keeps, for everything in it, the line it stands on. */
export function settingFile(file: string, text: string, other?: OtherUnits): SettingFile {
  const problems: Problem[] = [];
  const lines = new LineCounter();
  const document = parseDocument(text, { lineCounter: lines, prettyErrors: false, strict: true });
  // What follows the first fault is mostly its echo.
  const first = [...document.errors].sort((a, b) => a.pos[0] - b.pos[0]).slice(0, 1);
  for (const { code, pos, message } of first) {
    const at = lines.linePos(pos[0]);
    const known = slipOf(code, message);
    problems.push({
      code: "settings-unreadable",
      weight: "stops",
      file,
      line: at.line,
      column: at.col,
      expected: known?.expected ?? "a setting as name, colon, blank, value",
      received: known?.received ?? shown(text.slice(pos[0], pos[1]).split("\n")[0] ?? ""),
      hint:
        known?.hint ?? "Indent with blanks, and put a text that holds a colon, a # or a bracket in quotes.",
    });
  }

  const lineOf = (node: Node | null | undefined, fallback: number): number =>
    node?.range == null ? fallback : lines.linePos(node.range[0]).line;

  const setting = (node: Node | null, path: string, line: number): Setting => {
    const spot: Spot = { file, line, column: path === "" ? null : path };
    const written = isScalar(node)
      ? String(typeof node.value === "number" ? (node.source ?? node.value) : (node.value ?? ""))
      : "";
    const received = isMap(node) ? "a group of settings" : isSeq(node) ? "a list" : shown(written);
    const told = new Set<string>();
    const fault = (code: string, expected: string, hint: string): null => {
      if (!told.has(code)) problems.push({ ...spot, code, weight: "stops", expected, received, hint });
      told.add(code);
      return null;
    };
    const text = (what: string): string | null =>
      isScalar(node) && written.trim() !== ""
        ? written.trim()
        : fault("setting-unreadable", what, "Write it behind the colon.");
    const quantity = <Kind extends QuantityKind>(kind: Kind): QuantityOf[Kind] | null => {
      const read = parseQuantity(written, kind, null, other);
      if (read.fault === null) return read.value;
      problems.push({ ...quantityProblem(spot, written, kind, read.fault, null), received });
      return null;
    };
    return {
      path,
      spot,
      form: isMap(node) ? "group" : isSeq(node) ? "list" : "value",
      fault,
      text,
      settings: (known) => {
        if (!isMap(node))
          return fault(
            "setting-not-a-group",
            "a group of settings",
            "Write each as name, colon, blank, value.",
          );
        const found = new Map<string, Setting>();
        for (const { key, value } of node.items) {
          const name = isScalar(key) && key.value !== null ? String(key.value) : "";
          const inner = path === "" ? name : `${path}.${name}`;
          const at = lineOf(key as Node, line);
          if (known !== null && !known.includes(name)) {
            const near = didYouMean(name, known);
            problems.push({
              ...unknownName(
                { file, line: at, column: inner === "" ? null : inner },
                name,
                "a known setting",
                known,
                "setting-unknown",
              ),
              ...(near === null ? { hint: `Known here: ${known.join(", ")}.` } : {}),
            });
          } else found.set(name, setting((value as Node | null) ?? null, inner, at));
        }
        const get = (name: string): Setting | null => found.get(name) ?? null;
        return {
          names: [...found.keys()],
          get,
          need: (name, what) => {
            const there = get(name);
            if (there !== null) return there;
            problems.push({
              code: "setting-missing",
              weight: "stops",
              file,
              line: spot.line,
              column: path === "" ? name : `${path}.${name}`,
              expected: what,
              received: "nothing",
              hint: `Add a line "${name}: ...".`,
            });
            return null;
          },
        };
      },
      list: () => {
        if (!isSeq(node)) {
          fault("setting-not-a-list", "a list", "Begin each entry on its own line with a dash and a blank.");
          return [];
        }
        return node.items.map((item, index) =>
          setting(item as Node | null, `${path}[${index + 1}]`, lineOf(item as Node, line)),
        );
      },
      number: (what, low, high, whole) => {
        const value = isScalar(node) && written.trim() !== "" ? Number(written) : Number.NaN;
        if (value >= low && value <= high && (whole === undefined || Number.isInteger(value))) return value;
        const comma = /^\s*[-+]?\d+,\d+\s*$/u.test(written);
        const hint = comma
          ? "Write a point in the place of the comma."
          : whole === undefined
            ? "Write a plain number."
            : "Write a whole number.";
        return fault("number-unreadable", `${what} from ${low} to ${high}`, hint);
      },
      clock: () =>
        parseClock(written) ??
        fault("clock-unreadable", 'a time like "7:00" or "6:30 pm"', "Use the farm's clock."),
      oneOf: (words) => {
        const word = words.find((known) => known.toLowerCase() === written.trim().toLowerCase());
        if (word !== undefined) return word;
        problems.push({
          ...unknownName(spot, written, `one of ${words.join(", ")}`, words, "word-unknown"),
          received,
        });
        return null;
      },
      quantity,
      amount: (kind) => {
        const value = quantity(kind);
        if (value === null || value >= 0) return value;
        return fault("below-zero", `${quantityWords(kind)}, not below zero`, "Take the minus sign out.");
      },
      share: (most) => {
        const value = quantity("share");
        if (value === null || (value >= 0 && value <= most)) return value;
        return fault("share-out-of-range", `a share from 0 to ${most * 100} %`, "Raise or lower it.");
      },
    };
  };
  return { root: setting(document.contents as Node | null, "", 1), problems };
}
