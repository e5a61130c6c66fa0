import { readFileSync } from "node:fs";
import { parse } from "csv-parse/sync";
import { catalogue, type Farm } from "../../src/farm/index.ts";
import { readFolder, type Table } from "../../src/folder/index.ts";
import { formatProblem } from "../../src/problem/index.ts";

const FOLDER = new URL("../../examples/hollow-creek/", import.meta.url);

function table(file: string): Table {
  const records = parse(readFileSync(new URL(file, FOLDER)), {
    info: true,
    relax_column_count: true,
  }) as unknown as readonly {
    readonly info: { readonly lines: number };
    readonly record: readonly string[];
  }[];
  return { file, rows: records.map(({ info, record }) => ({ line: info.lines, cells: record })) };
}

/** The farm of the example, without its log and forecast. */
export function exampleFarm(): Farm {
  const { value, problems } = readFolder(
    {
      farm: { file: "farm.yaml", text: readFileSync(new URL("farm.yaml", FOLDER), "utf8") },
      successions: table("successions.csv"),
      pieces: table("pieces.csv"),
      notes: table("notes.csv"),
      unread: [],
    },
    catalogue(),
  );
  if (value === null) throw new Error(problems.map(formatProblem).join("\n"));
  return value;
}
