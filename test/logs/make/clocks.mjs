// Dates, times and zones.
import {
  ahead,
  all,
  comma,
  dmy,
  hm,
  hms,
  hours,
  lines,
  mdy,
  NEW_YORK,
  reading,
  series,
  stamp,
  twelve,
  two,
  ymd,
} from "./kit.mjs";

const BERLIN = "Europe/Berlin";
const PARIS = "Europe/Paris";
const outside = (readings, unit) => ({ hours: { outside: hours(readings, unit) }, read: all(readings) });

/** A log with one column of moments, written by `write`. */
const moments = (header, readings, write) =>
  lines(
    header,
    readings.map((r) => `${write(r)},${r.text}`),
  );
const semicolons = (header, readings, write) =>
  lines(
    header,
    readings.map((r) => `${write(r)};${comma(r)}`),
  );

const half = series({ from: "2026-04-17T20:00", every: 30, rows: 24 });
/** Runs over midnight; every day and month could change places. */
const april = series({ from: "2026-04-03T18:00", every: 60, rows: 48 });
const third = series({ from: "2026-02-03T01:00", every: 60, rows: 20 });
const same = series({ from: "2026-04-04T00:00", every: 60, rows: 24 });
const iso = (minutes) =>
  `${minutes < 0 ? "-" : "+"}${two(Math.floor(Math.abs(minutes) / 60))}:${two(Math.abs(minutes) % 60)}`;
const short = ({ y }) => two(y % 100);
const EPOCH_1900 = Date.UTC(1899, 11, 30);
/** Days since the spreadsheet's first, of a clock's reading. */
const serial = ({ y, mo, d, h, mi, s }) => (Date.UTC(y, mo - 1, d, h, mi, s) - EPOCH_1900) / 86_400_000;
const dayOfYear = ({ y, mo, d }) => (Date.UTC(y, mo - 1, d) - Date.UTC(y, 0, 1)) / 86_400_000 + 1;

const inZone = (zone, from, more = {}) => series({ zone, from, every: 30, rows: 24, ...more });
const named = (name, zone, readings, header, months, write, about) => ({
  name: `months-${name}`,
  about,
  zone,
  units: "metric",
  content: semicolons(header, readings, (r) => write(r, months[r.mo - 1])),
  ...outside(readings),
});
const halves = (name, header, zone, write, about) => {
  const readings = inZone(zone, "2026-04-17T20:00", { rows: 36 });
  return {
    name: `half-days-${name}`,
    about,
    zone,
    units: "metric",
    content: semicolons(header, readings, write),
    ...outside(readings),
  };
};
const french = inZone(PARIS, "2026-02-17T20:00", { low: -2, high: 9 });
const german = inZone(BERLIN, "2026-03-17T20:00", { low: -2, high: 11 });
const spanish = inZone("Europe/Madrid", "2026-01-17T20:00", { low: 2, high: 14 });
const dutch = inZone("Europe/Amsterdam", "2026-03-14T20:00", { low: 1, high: 12 });
const italian = inZone("Europe/Rome", "2025-05-20T20:00", { low: 12, high: 24 });
const spring = series({ from: "2026-03-08T00:00", every: 15, rows: 24 });
const autumn = series({ from: "2025-11-02T00:00", every: 30, rows: 16 });
const steadyAutumn = series({ zone: -240, from: "2025-11-01T20:00", every: 10, rows: 60 });
const threeHours = series({ from: "2025-11-01T12:00", every: 180, rows: 12 });
const october = inZone(BERLIN, "2025-10-17T20:00");
const august = inZone(PARIS, "2025-08-17T20:00", { low: 14, high: 28 });
const steady = series({ zone: -300, from: "2026-03-07T12:00", every: 60, rows: 48 });
const berlinAutumn = series({ zone: BERLIN, from: "2025-10-25T20:00", every: 60, rows: 16 });
const adelaide = series({
  zone: "Australia/Adelaide",
  from: "2026-04-04T22:00",
  every: 30,
  rows: 24,
  low: 13,
  high: 27,
});
const berlinMarch = series({ zone: BERLIN, from: "2026-03-28T20:00", every: 60, rows: 18 });
const walls = (zone, every, rows, from, places = 1) => series({ zone, every, rows, from, places });

export const clocks = [
  {
    name: "iso-z",
    about: "ISO in universal time.",
    content: moments("time,temperature_c", half, (r) => `${new Date(r.at).toISOString().slice(0, 19)}Z`),
    ...outside(half),
  },
  {
    name: "iso-fractions",
    about: "ISO with microseconds and +00:00.",
    content: moments(
      "time,temperature_c",
      half,
      (r) => `${new Date(r.at).toISOString().slice(0, 19)}.482913+00:00`,
    ),
    ...outside(half),
  },
  {
    name: "iso-offsets",
    about: "An offset behind each time; it changes with the clocks.",
    zone: BERLIN,
    units: "metric",
    content: moments(
      "Zeit,Temperatur °C",
      berlinMarch,
      (r) => `${ymd(r)}T${hms(r)}${iso(ahead(BERLIN, r.at))}`,
    ),
    ...outside(berlinMarch),
  },
  {
    name: "iso-basic",
    about: "ISO without signs between.",
    content: moments("stamp,temp_C", half, (r) => `${r.y}${two(r.mo)}${two(r.d)}T${hm(r, "")}`),
    ...outside(half),
  },
  {
    name: "digits-only",
    about: "Year to minute as twelve digits: a moment, no number and no epoch.",
    content: moments("stamp,temp_C", half, (r) => `${r.y}${two(r.mo)}${two(r.d)}${hm(r, "")}`),
    ...outside(half),
  },
  {
    name: "offset-in-header",
    about: "GMT-05:00 in the header: the instrument stays on standard time while the farm is on summer time.",
    content: lines(
      "#,Date Time (GMT-05:00),Temp (°C)",
      walls(-300, 30, 24, "2026-04-17T20:00").map((r) => `${r.index + 1},${stamp(r)},${r.text}`),
    ),
    ...outside(walls(-300, 30, 24, "2026-04-17T20:00")),
  },
  {
    name: "offset-in-header-with-comma",
    about: "The header's cell is quoted because of its comma: Date Time, UTC+02:00.",
    zone: "Europe/London",
    units: "metric",
    content: lines(
      '"Date Time, UTC+02:00","Temp, °C"',
      walls(120, 30, 24, "2026-04-17T20:00").map((r) => `${stamp(r)},${r.text}`),
    ),
    ...outside(walls(120, 30, 24, "2026-04-17T20:00")),
  },
  {
    name: "utc-in-header",
    about: "Time (UTC) in the header.",
    content: lines(
      "Date,Time (UTC),Temp (°C)",
      walls(0, 30, 24, "2026-04-17T20:00").map((r) => `${ymd(r)},${hm(r)},${r.text}`),
    ),
    ...outside(walls(0, 30, 24, "2026-04-17T20:00")),
  },
  {
    name: "utc-in-title",
    about: "A line above the header says that all times are UTC.",
    content: lines(
      "Station: upper terrace",
      "All times are UTC",
      "Date,Time,Temp (°C)",
      walls(0, 30, 24, "2026-04-17T20:00").map((r) => `${ymd(r)},${hm(r)},${r.text}`),
    ),
    ...outside(walls(0, 30, 24, "2026-04-17T20:00")),
  },
  {
    name: "zone-option",
    about: "The grower says the clock's zone, which is not the farm's.",
    args: ["--zone", "America/Chicago"],
    content: moments("Timestamp,Temp (°C)", walls("America/Chicago", 30, 24, "2026-04-17T20:00"), stamp),
    ...outside(walls("America/Chicago", 30, 24, "2026-04-17T20:00")),
  },
  {
    name: "zone-option-over-header",
    about: "The grower's word counts more than the header's: the instrument was set up wrongly.",
    args: ["--zone", "America/New_York"],
    content: moments("Date Time (GMT+00:00),Temp (°C)", half, stamp),
    ...outside(half),
  },
  {
    name: "month-first-thirteenth",
    about: "Slashes; a day above twelve shows that the month comes first.",
    content: moments("Date/Time,Temp (°C)", half, (r) => `${mdy(r)} ${hm(r)}`),
    ...outside(half),
  },
  {
    name: "month-first-thirteenth-late",
    about: "Only the last rows have a day above twelve.",
    content: moments(
      "Date/Time,Temp (°C)",
      walls(NEW_YORK, 180, 60, "2026-04-06T00:00"),
      (r) => `${mdy(r)} ${hm(r)}`,
    ),
    ...outside(walls(NEW_YORK, 180, 60, "2026-04-06T00:00")),
  },
  {
    name: "day-first-thirteenth",
    about: "Slashes; a day above twelve shows that the day comes first.",
    zone: "Europe/London",
    units: "metric",
    content: moments(
      "Date/Time,Temp (°C)",
      inZone("Europe/London", "2026-04-17T20:00"),
      (r) => `${dmy(r, "/")} ${hm(r)}`,
    ),
    ...outside(inZone("Europe/London", "2026-04-17T20:00")),
  },
  {
    name: "day-first-by-order",
    about: "3/4, 4/4, 5/4: only with the day first do hours follow each other.",
    content: moments("Date/Time,Temp (°C)", april, (r) => `${r.d}/${r.mo}/${r.y} ${hm(r)}`),
    ...outside(april),
  },
  {
    name: "month-first-by-order",
    about: "4/3, 4/4, 4/5: only with the month first do hours follow each other.",
    content: moments("Date/Time,Temp (°C)", april, (r) => `${r.mo}/${r.d}/${r.y} ${hm(r)}`),
    ...outside(april),
  },
  {
    name: "month-first-by-order-newest-first",
    about: "The same backwards.",
    content: moments("Date/Time,Temp (°C)", april.toReversed(), (r) => `${r.mo}/${r.d}/${r.y} ${hm(r)}`),
    ...outside(april),
  },
  {
    name: "day-first-by-month-end",
    about: "From 31/03 to 01/04: the thirty-first settles the order.",
    zone: BERLIN,
    units: "metric",
    content: moments(
      "Date/Time,Temp (°C)",
      inZone(BERLIN, "2026-03-31T14:00"),
      (r) => `${dmy(r, "/")} ${hm(r)}`,
    ),
    ...outside(inZone(BERLIN, "2026-03-31T14:00")),
  },
  {
    name: "year-first-short",
    about: "26/04/03, 26/04/04: the year in two digits comes first, as days follow each other only then.",
    content: moments("Date/Time,Temp (°C)", april, (r) => `${short(r)}/${two(r.mo)}/${two(r.d)} ${hm(r)}`),
    ...outside(april),
  },
  {
    name: "day-first-short",
    about: "03.04.26, 04.04.26, 05.04.26.",
    zone: BERLIN,
    units: "metric",
    content: semicolons(
      "Datum Uhrzeit;Temperatur (°C)",
      walls(BERLIN, 60, 48, "2026-04-03T18:00"),
      (r) => `${two(r.d)}.${two(r.mo)}.${short(r)} ${hm(r)}`,
    ),
    ...outside(walls(BERLIN, 60, 48, "2026-04-03T18:00")),
  },
  {
    name: "dates-ambiguous",
    about: "One day, 2/3/2026: February or March, nobody can tell.",
    content: moments("Date/Time,Temp (°C)", third, (r) => `${r.mo}/${r.d}/${r.y} ${hm(r)}`),
    problem: { code: "log-dates-ambiguous", line: 2, names: ["--dates", "2/3/2026"] },
  },
  {
    name: "dates-ambiguous-short",
    about: "One day, 05/04/03: three ways to read it.",
    content: moments(
      "Date/Time,Temp (°C)",
      walls(NEW_YORK, 60, 20, "2005-04-03T01:00"),
      (r) => `${short(r)}/${two(r.mo)}/${two(r.d)} ${hm(r)}`,
    ),
    problem: { code: "log-dates-ambiguous", line: 2, names: ["--dates"] },
  },
  {
    name: "dates-ambiguous-metric-farm",
    about: "The farm's units are no hint to the order of dates.",
    zone: BERLIN,
    units: "metric",
    content: moments(
      "Date/Time,Temp (°C)",
      walls(BERLIN, 60, 20, "2026-02-03T01:00"),
      (r) => `${dmy(r, "/")} ${hm(r)}`,
    ),
    problem: { code: "log-dates-ambiguous", line: 2, names: ["--dates"] },
  },
  {
    name: "dates-option",
    about: "The same day, with the grower's word: day first.",
    args: ["--dates", "dmy"],
    content: moments("Date/Time,Temp (°C)", third, (r) => `${r.d}/${r.mo}/${r.y} ${hm(r)}`),
    ...outside(third),
  },
  {
    name: "dates-option-wrong",
    about: "The grower says month first, but 17/04 has no such month: nothing is stored.",
    args: ["--dates", "mdy"],
    content: moments("Date/Time,Temp (°C)", half, (r) => `${dmy(r, "/")} ${hm(r)}`),
    problem: { code: "log-dates-unreadable", names: ["--dates"] },
  },
  {
    name: "dates-same-either-way",
    about: "One day, 4/4/2026: the order does not matter, so nobody is asked.",
    content: moments("Date/Time,Temp (°C)", same, (r) => `${r.mo}/${r.d}/${r.y} ${hm(r)}`),
    ...outside(same),
  },
  {
    name: "months-english",
    about: "18-Apr-26, the month by name.",
    content: moments("Date/Time,Temp (°C)", half, (r) => `${r.d}-Apr-${short(r)} ${hm(r)}`),
    ...outside(half),
  },
  {
    name: "months-english-long",
    about: "April 18, 2026, quoted because of its comma.",
    content: lines(
      "Date,Time,Temp (°C)",
      half.map((r) => `"April ${r.d}, ${r.y}",${hm(r)},${r.text}`),
    ),
    ...outside(half),
  },
  named(
    "german",
    BERLIN,
    german,
    "Zeitpunkt;Temperatur in °C",
    ["", "", "März"],
    (r, month) => `${r.d}. ${month} ${r.y} ${hm(r)} Uhr`,
    "17. März 2026 20:00 Uhr.",
  ),
  named(
    "french",
    PARIS,
    french,
    "Date et heure;Température (°C)",
    ["", "févr."],
    (r, month) => `${r.d} ${month} ${r.y} ${two(r.h)}h${two(r.mi)}`,
    "17 févr. 2026 20h30.",
  ),
  named(
    "spanish",
    "Europe/Madrid",
    spanish,
    "Fecha y hora;Temperatura (°C)",
    ["enero"],
    (r, month) => `${r.d} de ${month} de ${r.y} ${hm(r)}`,
    "17 de enero de 2026 20:30.",
  ),
  named(
    "dutch",
    "Europe/Amsterdam",
    dutch,
    "Datum en tijd;Temperatuur (°C)",
    ["", "", "mrt"],
    (r, month) => `${r.d} ${month} ${r.y} ${hm(r)}`,
    "14 mrt 2026 20:30.",
  ),
  named(
    "italian",
    "Europe/Rome",
    italian,
    "Data e ora;Temperatura (°C)",
    ["", "", "", "", "mag"],
    (r, month) => `${r.d}-${month}-${r.y} ${hm(r, ".")}`,
    "20-mag-2025 20.30, a dot in the time.",
  ),
  {
    name: "weekday-before",
    about: "The weekday stands before the date.",
    zone: "Europe/London",
    units: "metric",
    content: moments(
      "When,Temp (°C)",
      inZone("Europe/London", "2026-04-17T20:00"),
      (r) => `${r.d === 17 ? "Fri" : "Sat"} ${dmy(r, "/")} ${hm(r)}`,
    ),
    ...outside(inZone("Europe/London", "2026-04-17T20:00")),
  },
  {
    name: "date-command",
    about: "As a small computer prints a moment: weekday, month, day, time, zone, year.",
    content: lines(
      "when;temp_C",
      half.map((r) => `${r.d === 17 ? "Fri" : "Sat"} Apr ${r.d} ${hms(r)} EDT ${r.y};${r.text}`),
    ),
    ...outside(half),
  },
  {
    name: "half-days",
    about: "12-hour clock with AM and PM; 12:00 AM is midnight.",
    content: moments("Date/Time,Temp (°C)", half, (r) => `${mdy(r)} ${twelve(r, " AM", " PM")}`),
    ...outside(half),
  },
  {
    name: "half-days-letter",
    about: "12-hour clock with a and p close behind.",
    file: "log.txt",
    content: lines(
      "Date\tTime\tTemp (°C)",
      half
        .map((r) => `${mdy(r)}\t${twelve(r, "a", "p")}`)
        .map((line, index) => `${line}\t${half[index].text}`),
    ),
    ...outside(half),
  },
  {
    name: "half-days-apart",
    about: "AM and PM in a column of their own.",
    content: lines(
      "Date,Time,,Temp (°C)",
      half.map((r) => `${mdy(r)},${twelve(r, ",AM", ",PM")},${r.text}`),
    ),
    ...outside(half),
  },
  halves(
    "spanish",
    "Fecha y hora;Temperatura (°C)",
    "America/Bogota",
    (r) =>
      `${dmy(r, "/")} ${twelve(r, ...(r.index % 2 === 0 ? [" a. m.", " p. m."] : ["\u00A0a.\u00A0m.", "\u00A0p.\u00A0m."]))}`,
    "a. m. and p. m., with a hard blank or a plain one between.",
  ),
  halves(
    "german",
    "Datum und Uhrzeit;Temperatur (°C)",
    BERLIN,
    (r) => `${dmy(r)} ${twelve(r, " vorm.", " nachm.")}`,
    "vorm. and nachm.",
  ),
  halves(
    "japanese",
    "日時;気温(℃)",
    "Asia/Tokyo",
    (r) => `${r.y}/${two(r.mo)}/${two(r.d)} ${r.h < 12 ? "午前" : "午後"} ${twelve(r, "", "")}`,
    "午前 and 午後 before the time.",
  ),
  halves(
    "korean",
    "시간;온도(℃)",
    "Asia/Seoul",
    (r) => `${r.y}-${two(r.mo)}-${two(r.d)} ${r.h < 12 ? "오전" : "오후"} ${twelve(r, "", "")}`,
    "오전 and 오후 before the time.",
  ),
  halves(
    "greek",
    "Ημερομηνία;Θερμοκρασία (°C)",
    "Europe/Athens",
    (r) => `${dmy(r, "/")} ${twelve(r, " πμ", " μμ")}`,
    "πμ and μμ.",
  ),
  {
    name: "half-days-lost",
    about:
      "A spreadsheet dropped AM and PM: each hour from 1 to 12 comes twice. Nobody can tell morning from evening.",
    content: lines(
      "Date,Time,Temp (°C)",
      walls(NEW_YORK, 60, 48, "2026-04-17T01:00").map((r) => `${ymd(r)},${twelve(r, "", "")},${r.text}`),
    ),
    problem: { code: "log-times-ambiguous", names: ["AM"] },
  },
  {
    name: "hour-24",
    about: "Midnight as 24:00 of the day that ends.",
    zone: BERLIN,
    units: "metric",
    content: semicolons("Datum;Zeit;Temperatur (°C)", walls(BERLIN, 60, 30, "2026-04-17T20:00"), (r) =>
      r.h === 0 ? `${two(r.d - 1)}.04.2026;24:00` : `${dmy(r)};${hm(r)}`,
    ),
    ...outside(walls(BERLIN, 60, 30, "2026-04-17T20:00")),
  },
  {
    name: "day-of-year",
    about: "Year, day of the year, and a clock as a number: 0, 30, 930, 1530.",
    content: lines(
      "YEAR,DOY,HHMM,AIR_C",
      walls(NEW_YORK, 30, 48, "2026-04-17T12:00").map(
        (r) => `${r.y},${dayOfYear(r)},${r.h * 100 + r.mi},${r.text}`,
      ),
    ),
    ...outside(walls(NEW_YORK, 30, 48, "2026-04-17T12:00")),
  },
  {
    name: "day-of-year-2400",
    about: "The same, with midnight as 2400 of the day that ends, and an array number before the year.",
    content: lines(
      "id,year,day,hhmm,air temp degC,batt V",
      walls(NEW_YORK, 60, 30, "2026-04-17T20:00").map(
        (r) =>
          `101,${r.y},${r.h === 0 && r.mi === 0 ? dayOfYear(r) - 1 : dayOfYear(r)},${r.h === 0 ? 2400 : r.h * 100},${r.text},12.6`,
      ),
    ),
    ...outside(walls(NEW_YORK, 60, 30, "2026-04-17T20:00")),
  },
  {
    name: "clock-four-digits",
    about: "Date, and a clock of four digits.",
    content: lines(
      "Date,Time,Temp (°C)",
      half.map((r) => `${ymd(r)},${hm(r, "")},${r.text}`),
    ),
    ...outside(half),
  },
  {
    name: "clock-words",
    about: "Hours as 7 Uhr.",
    zone: BERLIN,
    units: "metric",
    content: semicolons(
      "Tag;Uhrzeit;Temp. °C",
      walls(BERLIN, 60, 30, "2026-04-17T20:00"),
      (r) => `${dmy(r)};${r.h} Uhr`,
    ),
    ...outside(walls(BERLIN, 60, 30, "2026-04-17T20:00")),
  },
  {
    name: "hour-column",
    about: "Date and the number of the hour, 0 to 23.",
    content: lines(
      "Date,Hour,Temp (°C)",
      walls(NEW_YORK, 60, 30, "2026-04-17T20:00").map((r) => `${ymd(r)},${r.h},${r.text}`),
    ),
    ...outside(walls(NEW_YORK, 60, 30, "2026-04-17T20:00")),
  },
  {
    name: "five-columns-of-time",
    about: "Year, month, day, hour and minute in columns of their own.",
    file: "met.txt",
    content: lines(
      "year mon day hr min Tair",
      "- - - - - degC",
      half.map((r) => `${r.y} ${two(r.mo)} ${two(r.d)} ${two(r.h)} ${two(r.mi)} ${r.text}`),
    ),
    ...outside(half),
  },
  {
    name: "epoch-seconds",
    about: "Seconds since 1970.",
    content: moments("timestamp,temperature (°C)", half, (r) => r.at / 1000),
    ...outside(half),
  },
  {
    name: "epoch-milliseconds",
    about: "Milliseconds since 1970.",
    content: moments("timestamp,temperature (°C)", half, (r) => r.at),
    ...outside(half),
  },
  {
    name: "serial-days",
    about: "A spreadsheet's days since 1900 with a fraction, rounded to five places, on the farm's clock.",
    content: moments("Date/Time,Temp (°C)", half, (r) => serial(r).toFixed(5)),
    ...outside(half),
  },
  {
    name: "serial-days-decimal-comma",
    about: "The same with decimal commas.",
    zone: BERLIN,
    units: "metric",
    content: semicolons("Datum/Zeit;Temperatur (°C)", inZone(BERLIN, "2026-04-17T20:00"), (r) =>
      serial(r).toFixed(9).replace(".", ","),
    ),
    ...outside(inZone(BERLIN, "2026-04-17T20:00")),
  },
  {
    name: "serial-days-apart",
    about: "Whole days and the fraction of the day in two columns.",
    content: lines(
      "Date,Time,Temp (°C)",
      half.map((r) => `${Math.floor(serial(r))},${(serial(r) % 1).toFixed(6)},${r.text}`),
    ),
    ...outside(half),
  },
  {
    name: "no-leading-zeros",
    about: "2026-4-5 7:05.",
    content: moments(
      "Timestamp,Temp (°C)",
      walls(NEW_YORK, 25, 40, "2026-04-04T21:05"),
      (r) => `${r.y}-${r.mo}-${r.d} ${r.h}:${two(r.mi)}`,
    ),
    ...outside(walls(NEW_YORK, 25, 40, "2026-04-04T21:05")),
  },
  {
    name: "no-year",
    about: "Day and month without a year: refused, and the year is what is missing.",
    zone: BERLIN,
    units: "metric",
    content: semicolons(
      "Datum;Zeit;Temperatur (°C)",
      inZone(BERLIN, "2026-04-17T20:00"),
      (r) => `${two(r.d)}.${two(r.mo)}.;${hm(r)}`,
    ),
    problem: { code: "log-dates-unreadable", names: ["year"] },
  },
  {
    name: "running-number-only",
    about: "A start and an interval in the title, then numbers without times: refused.",
    content: lines(
      "Start: 2026-04-17 20:00",
      "Interval: 30 min",
      "No.,Temp (°C)",
      half.map((r) => `${r.index + 1},${r.text}`),
    ),
    problem: { code: ["log-dates-unreadable", "log-header-missing"], names: ["date"] },
  },
  {
    name: "date-without-time",
    about: "One temperature a day and no time: neither a low and high nor an hour.",
    content: lines(
      "Date,Temp (°C)",
      Array.from({ length: 20 }, (_, day) => `2026-03-${two(day + 1)},${(5 + (day % 4)).toFixed(1)}`),
    ),
    problem: { code: "log-time-missing", names: ["low", "high"] },
  },
  {
    name: "date-once-a-day",
    about: "Kept by hand in a spreadsheet: the date stands only in a day's first row.",
    content: lines(
      "Date,Time,Temp (°C),Remark",
      walls(NEW_YORK, 180, 20, "2026-04-14T09:00").map(
        (r, index) => `${index === 0 || r.h === 0 ? ymd(r) : ""},${hm(r)},${r.text},`,
      ),
    ),
    ...outside(walls(NEW_YORK, 180, 20, "2026-04-14T09:00")),
  },
  {
    name: "hours-in-columns",
    about: "A row a day, a column an hour of reading: 6:00, 14:00, 21:00.",
    zone: BERLIN,
    units: "metric",
    content: lines(
      "Lufttemperatur in °C",
      "Datum;6:00;14:00;21:00",
      "13.04.2026;3,1;14,2;8,0",
      "14.04.2026;4,4;15,0;8,8",
      "15.04.2026;;13,7;7,5",
      "16.04.2026;2,0;12,9;6,1",
      "17.04.2026;1,2;14,4;7,9",
      "18.04.2026;3,3;16,1;9,2",
    ),
    hours: {
      outside: hours(
        [
          [13, 3.1, 14.2, 8],
          [14, 4.4, 15, 8.8],
          [15, null, 13.7, 7.5],
          [16, 2, 12.9, 6.1],
          [17, 1.2, 14.4, 7.9],
          [18, 3.3, 16.1, 9.2],
        ].flatMap(([day, ...values]) =>
          ["06:00", "14:00", "21:00"].flatMap((time, index) =>
            values[index] === null ? [] : [reading(BERLIN, `2026-04-${day}T${time}`, values[index])],
          ),
        ),
      ),
    },
    warns: [],
  },
  {
    name: "spring-change",
    about: "The clock goes forward, and the log's with it: 01:45 is followed by 03:00.",
    content: moments("Timestamp,Temp (°C)", spring, stamp),
    ...outside(spring),
  },
  {
    name: "autumn-change",
    about:
      "The clock goes back, and the log's with it: 01:00 and 01:30 come twice, and each is an hour of its own.",
    content: moments("Timestamp,Temp (°C)", autumn, stamp),
    ...outside(autumn),
    warns: [],
  },
  {
    name: "autumn-change-berlin",
    about: "The same in Europe, hourly, day first: 02:00 comes twice.",
    zone: BERLIN,
    units: "metric",
    content: semicolons("Datum;Zeit;Temperatur (°C)", berlinAutumn, (r) => `${dmy(r)};${hm(r)}`),
    ...outside(berlinAutumn),
    warns: [],
  },
  {
    name: "autumn-change-newest-first",
    about: "The same night with the newest reading first.",
    content: moments("Timestamp,Temp (°C)", autumn.toReversed(), stamp),
    ...outside(autumn),
    warns: [],
  },
  {
    name: "autumn-change-named",
    about: "EDT and EST behind each time tell the two hours apart.",
    content: moments(
      "Timestamp,Temp (°C)",
      autumn,
      (r) => `${stamp(r)} ${ahead(NEW_YORK, r.at) === -240 ? "EDT" : "EST"}`,
    ),
    ...outside(autumn),
  },
  {
    name: "clock-does-not-change",
    about:
      "Readings in the hour the farm's clock skips in spring: the log's clock does not change, and the grower must say its zone.",
    content: moments("Timestamp,Temp (°C)", steady, stamp),
    problem: { code: "log-hour-that-never-was", line: 16, names: ["--zone"] },
  },
  {
    name: "clock-does-not-change-zone-option",
    about: "The same log with its zone.",
    args: ["--zone", "Etc/GMT+5"],
    content: moments("Timestamp,Temp (°C)", steady, stamp),
    ...outside(steady),
  },
  {
    name: "kolkata",
    about: "A zone half an hour off: two readings of one clock hour lie in two hours of UTC.",
    zone: "Asia/Kolkata",
    units: "metric",
    content: moments(
      "Date Time,Temp (°C)",
      inZone("Asia/Kolkata", "2026-04-17T20:00", { low: 22, high: 36 }),
      (r) => `${dmy(r, "-")} ${hm(r)}`,
    ),
    ...outside(inZone("Asia/Kolkata", "2026-04-17T20:00", { low: 22, high: 36 })),
  },
  {
    name: "adelaide",
    about: "Half an hour off, and clocks go back on April 5.",
    zone: "Australia/Adelaide",
    units: "metric",
    content: moments("Date Time,Temp (°C)", adelaide, (r) => `${dmy(r, "/")} ${hm(r)}`),
    ...outside(adelaide),
    warns: [],
  },
  {
    name: "kathmandu",
    about: "A zone three quarters of an hour off.",
    zone: "Asia/Kathmandu",
    units: "metric",
    content: moments("Timestamp,Temp (°C)", walls("Asia/Kathmandu", 15, 40, "2026-04-17T20:00"), stamp),
    ...outside(walls("Asia/Kathmandu", 15, 40, "2026-04-17T20:00")),
  },
  {
    name: "auckland",
    about: "New Zealand, hourly, day first.",
    zone: "Pacific/Auckland",
    units: "metric",
    content: moments(
      "Date,Air temperature (°C)",
      walls("Pacific/Auckland", 60, 40, "2026-04-14T20:00"),
      (r) => `${r.d}/${two(r.mo)}/${r.y} ${twelve(r, " am", " pm")}`,
    ),
    ...outside(walls("Pacific/Auckland", 60, 40, "2026-04-14T20:00")),
  },
  {
    name: "nairobi",
    about: "Kenya, half-hourly, month named.",
    zone: "Africa/Nairobi",
    units: "metric",
    content: moments(
      "Date & time,Temp (deg C)",
      inZone("Africa/Nairobi", "2026-04-17T20:00", { low: 14, high: 25 }),
      (r) => `${two(r.d)} Apr ${r.y} ${hm(r)}`,
    ),
    ...outside(inZone("Africa/Nairobi", "2026-04-17T20:00", { low: 14, high: 25 })),
  },
  {
    name: "sao-paulo",
    about: "Brazil: data, hora, temperatura; decimal commas.",
    zone: "America/Sao_Paulo",
    units: "metric",
    content: semicolons(
      "Data;Hora;Temperatura do ar (ºC)",
      inZone("America/Sao_Paulo", "2026-04-17T20:00", { low: 17, high: 27 }),
      (r) => `${dmy(r, "/")};${hms(r)}`,
    ),
    ...outside(inZone("America/Sao_Paulo", "2026-04-17T20:00", { low: 17, high: 27 })),
  },
  {
    name: "warsaw",
    about: "Poland: data, godzina, temperatura.",
    zone: "Europe/Warsaw",
    units: "metric",
    content: semicolons(
      "Data;Godzina;Temperatura [°C]",
      inZone("Europe/Warsaw", "2026-04-17T20:00"),
      (r) => `${ymd(r)};${hm(r)}`,
    ),
    ...outside(inZone("Europe/Warsaw", "2026-04-17T20:00")),
  },

  {
    name: "clock-does-not-change-autumn",
    about:
      "Every ten minutes, evenly through the night in which the farm's clock goes back: had the log's clock gone back, six readings would come twice. Before or after, all is an hour off, and the grower must say its zone.",
    content: moments("Timestamp,Temp (°C)", steadyAutumn, stamp),
    problem: { code: ["log-hour-that-never-was", "log-clock-does-not-change"], names: ["--zone"] },
  },
  {
    name: "clock-does-not-change-autumn-zone-option",
    about: "The same log with its zone.",
    args: ["--zone", "Etc/GMT+4"],
    content: moments("Timestamp,Temp (°C)", steadyAutumn, stamp),
    ...outside(steadyAutumn),
  },
  {
    name: "autumn-three-hours",
    about: "Every three hours through that night: nothing comes twice, nothing is amiss.",
    content: moments("Timestamp,Temp (°C)", threeHours, stamp),
    ...outside(threeHours),
  },
  {
    name: "two-columns-of-time",
    about: "Universal time and the farm's side by side: both say the same.",
    content: lines(
      "Time (UTC),Local time,Temp (°C)",
      half.map((r) => `${new Date(r.at).toISOString().slice(0, 16).replace("T", " ")},${stamp(r)},${r.text}`),
    ),
    ...outside(half),
  },
  {
    name: "elapsed-time-first",
    about: "The time since the start stands before the moment.",
    content: lines(
      "Elapsed,Date/Time,Temp (°C)",
      half.map((r) => `${two(Math.floor(r.index / 2))}:${two((r.index % 2) * 30)}:00,${stamp(r)},${r.text}`),
    ),
    ...outside(half),
  },
  {
    name: "hours-as-ranges",
    about: "Hourly means, labelled 13:00-14:00: the hour that begins at 13.",
    content: lines(
      "Date,Hour,Mean temp (°C)",
      walls(NEW_YORK, 60, 30, "2026-04-16T18:00").map(
        (r) => `${ymd(r)},${two(r.h)}:00-${two((r.h + 1) % 24)}:00,${r.text}`,
      ),
    ),
    ...outside(walls(NEW_YORK, 60, 30, "2026-04-16T18:00")),
  },
  halves(
    "chinese",
    "时间;温度(℃)",
    "Asia/Shanghai",
    (r) => `${r.y}/${r.mo}/${r.d} ${r.h < 12 ? "上午" : "下午"} ${twelve(r, "", "")}`,
    "上午 and 下午 before the time.",
  ),
  named(
    "german-short",
    BERLIN,
    october,
    "Zeitpunkt;Temperatur in °C",
    ["", "", "", "", "", "", "", "", "", "Okt."],
    (r, month) => `${r.d}. ${month} ${short(r)}, ${hm(r)}`,
    "17. Okt. 25, 20:00.",
  ),
  {
    name: "months-french-latin-1",
    about: "17-août-2025 in Latin-1.",
    zone: PARIS,
    units: "metric",
    content: Buffer.from(
      semicolons("Date;Heure;Température (°C)", august, (r) => `${r.d}-août-${r.y};${hm(r)}`),
      "latin1",
    ),
    ...outside(august),
  },
  {
    name: "months-english-capitals",
    about: "17-APR-2026.",
    content: moments("DATE,TIME,TEMP (C)", half, (r) => `${r.d}-APR-${r.y},${hm(r)}`),
    ...outside(half),
  },
  {
    name: "year-of-another-calendar",
    about:
      "17/4/2569, a year of the Thai calendar: refused with the year in the message, not put five centuries ahead.",
    zone: "Asia/Bangkok",
    units: "metric",
    content: moments(
      "Date,Temp (°C)",
      inZone("Asia/Bangkok", "2026-04-17T20:00", { low: 24, high: 36 }),
      (r) => `${r.d}/${r.mo}/${r.y + 543} ${hm(r)}`,
    ),
    problem: { code: ["log-in-the-future", "log-dates-unreadable"], names: ["2569"] },
  },
  {
    name: "impossible-dates",
    about: "A day and a time there are not, among good ones: these rows are left out.",
    content: moments("Timestamp,Temp (°C)", half, (r) =>
      r.index === 3 ? "2026-02-30 21:30" : r.index === 8 ? "2026-04-17 25:10" : stamp(r),
    ),
    hours: { outside: hours(half.filter(({ index }) => index !== 3 && index !== 8)) },
    read: { rows: 24, used: 22 },
  },
];
