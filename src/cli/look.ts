import type { Io, Sink } from "./io.ts";

/** How text may look on one stream. */
export interface Look {
  readonly width: number;
  readonly unicode: boolean;
  readonly color: boolean;
}

/** Flag, then a non-empty NO_COLOR, then FORCE_COLOR, then the terminal itself. */
function colored({ terminal }: Sink, { env }: Io, flag: boolean): boolean {
  if (!flag || (env.NO_COLOR ?? "") !== "") return false;
  const forced = env.FORCE_COLOR;
  if (forced !== undefined && forced !== "") return forced !== "0";
  return terminal && env.TERM !== "dumb";
}

/**
 * Width, signs and colour for one stream. Off a terminal always 80 columns, so that a saved sheet is the same everywhere.
 *
 * @param flags - color: false under --no-color; ascii: true under --ascii.
 */
export function lookOf(
  stream: Sink,
  io: Io,
  flags: { readonly color: boolean; readonly ascii: boolean },
): Look {
  const columns = stream.terminal ? (stream.columns ?? 80) : 80;
  return {
    width: Math.max(60, Math.min(columns, 120)),
    unicode: !flags.ascii && io.env.TERM !== "linux",
    color: colored(stream, io, flags.color),
  };
}
