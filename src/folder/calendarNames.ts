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

/** The days of the week from Sunday in other languages, without accents. */
const ABROAD: readonly (readonly string[])[] = [
  ["sonntag", "montag", "dienstag", "mittwoch", "donnerstag", "freitag", "samstag"],
  ["domingo", "lunes", "martes", "miercoles", "jueves", "viernes", "sabado"],
  ["dimanche", "lundi", "mardi", "mercredi", "jeudi", "vendredi", "samedi"],
  ["domenica", "lunedi", "martedi", "mercoledi", "giovedi", "venerdi", "sabato"],
  ["zondag", "maandag", "dinsdag", "woensdag", "donderdag", "vrijdag", "zaterdag"],
];

/** In two letters, as German and Dutch calendars have them. */
const SHORTEST: ReadonlyMap<string, number> = new Map([
  ["so", 0],
  ["zo", 0],
  ["mo", 1],
  ["di", 2],
  ["mi", 3],
  ["wo", 3],
  ["do", 4],
  ["fr", 5],
  ["vr", 5],
  ["sa", 6],
  ["za", 6],
]);

/**
 * The day of the week a text is, Sunday being 0, whole or shortened, in English, German, Spanish, French, Italian or Dutch;
 * −1 for none, and for what is another day in another language.
 *
 * @example weekdayNamed("mié") // => 3
 */
export function weekdayNamed(text: string): number {
  const plain = text.trim().normalize("NFD").replace(/\p{M}/gu, "").replace(/\.$/u, "").toLowerCase();
  const days = new Set([WEEKDAYS, ...ABROAD].map((names) => nameAt(plain, names)).filter((day) => day >= 0));
  return SHORTEST.get(plain) ?? (days.size === 1 ? [...days][0]! : -1);
}

/** Which of the names a text is, whole or shortened to three letters or more; −1 for none. @example nameAt("tues", WEEKDAYS) // => 2 */
export function nameAt(text: string, names: readonly string[]): number {
  const short = text.trim().replace(/\.$/u, "").toLowerCase();
  return short.length < 3 ? -1 : names.findIndex((name) => name.toLowerCase().startsWith(short));
}

/** A pattern of the same, in lower case. */
export const shortened = (names: readonly string[]): string =>
  names
    .flatMap((name) =>
      Array.from(name.slice(2), (_, index) => name.slice(0, name.length - index).toLowerCase()),
    )
    .join("|");
