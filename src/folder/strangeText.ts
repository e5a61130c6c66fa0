/** Beginnings of texts that are no tables, and what they are. */
const STRANGERS: readonly (readonly [begins: RegExp, what: string, way: string])[] = [
  [/^<(?:!doctype|html|head|body|\?xml)/iu, "a web page", "Download the log itself, as CSV."],
  [/^(?:\{\s*(?:"|$)|\[\s*(?:\{|\[|$))/u, "a program's answer in JSON", "Export the log as CSV."],
];

/** What a text that is no table seems to be, from its first filled line, with the way out; null when it may be one. */
export function strangeText(line: string): { readonly what: string; readonly way: string } | null {
  const found = STRANGERS.find(([begins]) => begins.test(line.trim()));
  return found === undefined ? null : { what: found[1], way: found[2] };
}
