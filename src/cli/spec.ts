import type { Context } from "./context.ts";

/** One option, as data: the parser, the help and the table of commands are made from it. */
export interface OptionSpec {
  readonly flags: string;
  readonly description: string;
  readonly choices?: readonly string[];
  /** May be given several times. */
  readonly repeats?: true;
  /** It names a file a result is written into. */
  readonly writes?: true;
}

/** What was given on the command line, by the option's long name. */
export type Given = Readonly<Record<string, string | boolean | readonly string[] | undefined>>;

export interface CommandSpec {
  readonly name: string;
  readonly summary: string;
  readonly argument?: { readonly form: string; readonly description: string };
  readonly options: readonly OptionSpec[];
  readonly examples: readonly { readonly command: string; readonly shows: string }[];
  /** Loads the command's own code: only the one that runs. */
  load(): Promise<{ readonly run: Run }>;
}

/** Runs a command and gives the exit code. */
export type Run = (names: readonly string[], given: Given, context: Context) => Promise<number>;
