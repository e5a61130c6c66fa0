// Every published, derived and common-practice number beside ours, in one table; ends with a failure when one is missed.

import { made, type Result, type Subject } from "./accuracy/check.ts";
import { SUBJECTS } from "./accuracy/subjects.ts";

interface Compared {
  readonly subject: Subject;
  readonly results: readonly Result[];
}

const compared = (): readonly Compared[] =>
  SUBJECTS.map((subject) => ({ subject, results: subject.checks.map(made) }));

/** Short enough for a column, with the digits that count. */
function figure(value: number): string {
  if (value === 0 || Number.isInteger(value)) return String(value);
  return Math.abs(value) >= 1e-4 ? String(Number(value.toPrecision(7))) : value.toExponential(1);
}

const published = ({ check }: Result): string =>
  typeof check.published === "number" ? figure(check.published) : check.published.map(figure).join("–");

const HEAD = ["", "what", "published", "ours", "difference", "tolerance", "unit", "source", "why"];

const row = (result: Result): readonly string[] => {
  const { check, ours, difference, passed } = result;
  return [
    passed ? "" : "MISS",
    check.what,
    published(result),
    figure(ours),
    figure(difference),
    figure(check.tolerance),
    check.unit,
    check.source,
    check.why,
  ];
};

function table(rows: readonly (readonly string[])[]): readonly string[] {
  const widths = HEAD.map((_, column) => Math.max(...rows.map((cells) => cells[column]!.length)));
  const numbers = new Set([2, 3, 4, 5]);
  return rows.map((cells) =>
    cells
      .map((cell, i) => (numbers.has(i) ? cell.padStart(widths[i]!) : cell.padEnd(widths[i]!)))
      .join("  ")
      .trimEnd(),
  );
}

/** How close the closest miss is, as a share of its tolerance; 0 where nothing may differ. */
const used = ({ check, difference }: Result): number =>
  check.tolerance === 0 ? 0 : Math.abs(difference) / check.tolerance;

const worst = (results: readonly Result[]): Result =>
  results.reduce((most, each) => (used(each) > used(most) ? each : most));

/** One row a subject for the README: how many checks, how many missed, and the one that comes nearest to its tolerance. */
export function accuracyTable(): string {
  const all = compared();
  const rows = all.map(({ subject, results }) => {
    const { check, difference } = worst(results);
    return [
      subject.name,
      String(results.length),
      String(results.filter(({ passed }) => !passed).length),
      `${figure(Number(difference.toPrecision(2)))}${check.unit === "1" ? "" : ` ${check.unit}`} of ${figure(check.tolerance)}: ${check.what}`,
    ];
  });
  const head = ["", "checks", "missed", "nearest to its tolerance"];
  return [head, head.map(() => "---"), ...rows].map((cells) => `| ${cells.join(" | ")} |`).join("\n");
}

function report(): number {
  const all = compared();
  for (const { subject, results } of all) {
    const lines = table([HEAD, ...results.map(row)]);
    const findings = subject.findings?.() ?? [];
    process.stdout.write(`${[subject.name.toUpperCase(), ...lines, ...findings].join("\n")}\n\n`);
  }
  const results = all.flatMap((each) => each.results);
  const missed = results.filter(({ passed }) => !passed).length;
  process.stdout.write(`${results.length} checks, ${missed} missed\n`);
  return missed === 0 ? 0 : 1;
}

if (process.argv[1]?.endsWith("accuracy.mjs")) process.exitCode = report();
