import { Command, CommanderError, Option } from "commander";
import { formatProblem } from "../problem/index.ts";
import { COMMANDS } from "./commands/all.ts";
import { COULD_NOT, contextOf, DONE } from "./context.ts";
import type { Io } from "./io.ts";
import { wrongResults } from "./resultFile.ts";
import { SHARED } from "./shared.options.ts";
import { SHORT_HELP } from "./shortHelp.ts";
import type { CommandSpec, Given, OptionSpec } from "./spec.ts";
import { refusedBySystem } from "./unreadable.ts";
import { version } from "./version.ts";

function optionOf({ flags, description, choices, repeats }: OptionSpec): Option {
  const option = new Option(flags, description);
  if (repeats) option.argParser((text: string, before: readonly string[] = []) => [...before, text]);
  return choices === undefined ? option : option.choices([...choices]);
}

const EXIT_CODES = `
Exit codes: 0 done; 1 something needs you, under --strict; 2 could not run;
70 a fault in leafpace, printed with what to report.
`;

function examplesOf({ examples }: CommandSpec): string {
  const wide = Math.max(...examples.map(({ command }) => command.length));
  const narrow = examples.every(({ shows }) => wide + shows.length + 4 <= 80);
  const lines = examples.map(({ command, shows }) =>
    narrow ? `  ${command.padEnd(wide)}  ${shows}` : `  ${command}\n      ${shows}`,
  );
  return `Examples:\n${lines.join("\n")}\n`;
}

/**
 * Runs a command line and gives its exit code. Touches nothing of the process besides files.
 *
 * @param argv - What stands behind the program's name.
 */
export async function run(argv: readonly string[], io: Io): Promise<number> {
  if (argv.length === 0) {
    io.stdout.write(SHORT_HELP);
    return DONE;
  }
  let code = DONE;
  const program = new Command("leafpace")
    .description(
      "Which beds of baby greens reach cutting size on market day, and which covers bring them there.",
    )
    .version(version, "-V, --version", "print the version")
    .helpOption("-h, --help", "print this help")
    .helpCommand("help [command]", "print the help of a command")
    .configureHelp({ showGlobalOptions: true, helpWidth: 80 })
    .configureOutput({ writeOut: (text) => io.stdout.write(text), writeErr: (text) => io.stderr.write(text) })
    .showHelpAfterError('See "leafpace --help".')
    .exitOverride();
  for (const spec of SHARED) program.addOption(optionOf(spec));
  program.addHelpText("before", `${SHORT_HELP.split("\n\n").slice(1, 2).join("\n\n")}\n`);
  program.addHelpText("after", EXIT_CODES);
  for (const spec of COMMANDS) {
    const command = program.command(spec.name).description(spec.summary);
    if (spec.argument !== undefined) command.argument(spec.argument.form, spec.argument.description);
    for (const option of spec.options) command.addOption(optionOf(option));
    command.addHelpText("before", examplesOf(spec)).action(async (...parameters: unknown[]) => {
      const names = (spec.argument === undefined ? [] : [parameters[0]].flat()).filter(
        (name): name is string => typeof name === "string",
      );
      const given = command.optsWithGlobals<Given>();
      const wrong = await wrongResults(given, [...SHARED, ...spec.options], io.cwd);
      if (wrong.length > 0) {
        code = await contextOf(io, { ...given, output: undefined }).refuse(wrong);
        return;
      }
      const loaded = await spec.load();
      code = await loaded.run(names, given, contextOf(io, given));
    });
  }
  try {
    await program.parseAsync([...argv], { from: "user" });
    return code;
  } catch (error) {
    if (error instanceof CommanderError) return error.exitCode === 0 ? DONE : COULD_NOT;
    const refused = refusedBySystem(error);
    if (refused === null) throw error;
    io.stderr.write(`${formatProblem(refused)}\n`);
    return COULD_NOT;
  }
}
