/** From Sunday, as days of the week are counted here. */
export const WEEKDAYS = [
  "Sunday",
  "Monday",
  "Tuesday",
  "Wednesday",
  "Thursday",
  "Friday",
  "Saturday",
] as const;

export const MONTHS = [
  "January",
  "February",
  "March",
  "April",
  "May",
  "June",
  "July",
  "August",
  "September",
  "October",
  "November",
  "December",
] as const;

/** Which of the names a text is, whole or shortened to three letters or more; −1 for none. @example nameAt("tues", WEEKDAYS) // => 2 */
export function nameAt(text: string, names: readonly string[]): number {
  const short = text.trim().replace(/\.$/u, "").toLowerCase();
  return short.length < 3 ? -1 : names.findIndex((name) => name.toLowerCase().startsWith(short));
}
