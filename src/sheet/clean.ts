const ESCAPE = String.fromCharCode(27);
const BELL = String.fromCharCode(7);
const CONTROL_INTRODUCER = String.fromCharCode(0x9b);

/** Terminal commands: colours and cursor moves, titles and links, two-character commands. */
const COMMANDS: RegExp = new RegExp(
  [
    `(?:${ESCAPE}\\[|${CONTROL_INTRODUCER})[0-?]*[ -/]*[@-~]`,
    `${ESCAPE}\\][^${BELL}${ESCAPE}]*(?:${BELL}|${ESCAPE}\\\\)?`,
    `${ESCAPE}.?`,
  ].join("|"),
  "gsu",
);

/** What cannot be seen or turns the direction of writing; the two joiners some scripts need stay. */
const UNSEEN = /(?!\u200c|\u200d)[\p{Cc}\p{Cf}\p{Co}\p{Cn}\p{Cs}\p{Zl}\p{Zp}]/gu;

/**
 * A name a person typed, as one line that can be printed anywhere: terminal commands, control characters and marks that
 * turn the direction of writing are taken out, white space becomes single spaces.
 *
 * @example clean("North\t 1\n") // => "North 1"
 */
export function clean(name: string): string {
  const line = name
    .replace(COMMANDS, " ")
    .replace(/[\t\n\r\v\f]/g, " ")
    .replace(UNSEEN, "")
    .replace(/\s+/gu, " ")
    .trim();
  return line === "" ? "(no name)" : line;
}
