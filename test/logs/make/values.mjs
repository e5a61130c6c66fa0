// Units, columns, sensors, missing and broken readings.
import {
  all,
  comma,
  dmy,
  hm,
  hours,
  lines,
  mdy,
  NEW_YORK,
  reading,
  series,
  stamp,
  twelve,
  ymd,
} from "./kit.mjs";

const BERLIN = "Europe/Berlin";
const outside = (readings, unit) => ({ hours: { outside: hours(readings, unit) }, read: all(readings) });
const moments = (header, readings, write = (r) => r.text) =>
  lines(
    header,
    readings.map((r) => `${stamp(r)},${write(r)}`),
  );
const half = series({ from: "2026-04-17T20:00", every: 30, rows: 24 });
const warm = series({ from: "2026-04-17T20:00", every: 30, rows: 24, low: 41, high: 66 });
const hourly = series({ from: "2026-04-16T18:00", every: 60, rows: 30 });
const berlin = series({ zone: BERLIN, from: "2026-04-17T20:00", every: 30, rows: 24 });
const tunnel = series({ from: "2026-04-17T20:00", every: 30, rows: 24, low: 7, high: 24 });
const probes = ["outside", "tunnel-1"];

/** Some rows have something else instead of a temperature; the others count. */
function broken(
  name,
  about,
  readings,
  odd,
  { header = "Timestamp,Temp (°C)", unit = "C", zone, reason } = {},
) {
  const every = 2;
  const cell = (r) => (r.index % every === 1 ? (odd[(r.index - 1) / every] ?? r.text) : r.text);
  const isOdd = (r) => r.index % every === 1 && odd[(r.index - 1) / every] !== undefined;
  const good = readings.filter((r) => !isOdd(r));
  return {
    name,
    about,
    ...(zone === undefined ? {} : { zone }),
    content: moments(header, readings, cell),
    hours: { outside: hours(good, unit) },
    read: {
      rows: readings.length,
      used: good.length,
      ...(reason === undefined ? {} : { dropped: { [reason]: odd.length } }),
    },
  };
}

export const values = [
  {
    name: "fahrenheit",
    about: "°F in the header.",
    content: lines(
      "No.,Date,Time,Temp (°F)",
      warm.map((r) => `${r.index + 1},${mdy(r)},${twelve(r, " AM", " PM")},${r.text}`),
    ),
    ...outside(warm, "F"),
  },
  {
    name: "fahrenheit-whole",
    about: "Whole degrees Fahrenheit, the unit as a word.",
    content: moments(
      "Timestamp,Temperature Fahrenheit",
      warm.map((r) => ({ ...r, value: Math.round(r.value), text: String(Math.round(r.value)) })),
    ),
    ...outside(
      warm.map((r) => ({ ...r, value: Math.round(r.value) })),
      "F",
    ),
  },
  {
    name: "tenths-in-header",
    about: "Tenths of a degree, as the header says: 123 is 12.3.",
    content: moments("Timestamp,Temp (0.1 °C)", half, (r) => Math.round(r.value * 10)),
    ...outside(half),
  },
  {
    name: "tenths-in-unit-row",
    about: "Tenths of a degree in the row of units.",
    zone: BERLIN,
    units: "metric",
    content: lines(
      "Datum;Zeit;Lufttemperatur;Feuchte",
      ";;1/10 °C;%",
      berlin.map((r) => `${dmy(r)};${hm(r)};${Math.round(r.value * 10)};${60 + (r.index % 8)}`),
    ),
    ...outside(berlin),
  },
  {
    name: "tenths-in-title",
    about: "A line above the header says tenths of degrees Celsius.",
    content: lines(
      "Temperatures in tenths of degrees Celsius",
      "date,hour,T",
      hourly.map((r) => `${ymd(r)},${r.h},${Math.round(r.value * 10)}`),
    ),
    ...outside(hourly),
  },
  {
    name: "kelvin",
    about: "Kelvin, stated.",
    content: moments(
      "time,T_air [K]",
      half.map((r) => ({ ...r, text: (r.value + 273.15).toFixed(2) })),
    ),
    ...outside(half),
  },
  {
    name: "unit-missing",
    about: "No unit anywhere: refused.",
    content: moments("Timestamp,Temp", half),
    problem: { code: "log-unit-missing", line: 2, names: ["--unit"] },
  },
  {
    name: "unit-missing-though-plain",
    about: "Numbers from 41 to 66 look like Fahrenheit and are no proof: refused.",
    content: moments("Timestamp,Temp", warm),
    problem: { code: "log-unit-missing", line: 2, names: ["--unit F"] },
  },
  {
    name: "unit-missing-metric-farm",
    about: "The farm's own units say nothing about a logger: refused.",
    zone: BERLIN,
    units: "metric",
    content: moments("Zeit,Temperatur", berlin),
    problem: { code: "log-unit-missing", line: 2, names: ["--unit"] },
  },
  {
    name: "unit-missing-letter-c",
    about: "Humidity has its unit, a column is called Compass, temperature has no unit: refused.",
    content: lines(
      "Timestamp,Temp,RH (%),Compass",
      half.map((r) => `${stamp(r)},${r.text},61,270`),
    ),
    problem: { code: "log-unit-missing", line: 2, names: ["--unit"] },
  },
  {
    name: "unit-option",
    about: "The grower says the unit.",
    args: ["--unit", "F"],
    content: moments("Timestamp,Temp", warm),
    ...outside(warm, "F"),
  },
  {
    name: "unit-in-cells",
    about: "The unit behind each number.",
    content: moments("Timestamp,Reading", warm, (r) => `${r.text} °F`),
    ...outside(warm, "F"),
  },
  {
    name: "unit-in-cells-close",
    about: "The unit close behind each number, without a degree sign.",
    content: moments("Timestamp,Temperature", half, (r) => `${r.text}C`),
    ...outside(half),
  },
  {
    name: "unit-in-cells-mixed",
    about: "Someone switched the display: first °C, then °F behind the numbers.",
    content: moments("Timestamp,Temperature", half, (r) =>
      r.index < 12 ? `${r.text} °C` : `${(r.value * 1.8 + 32).toFixed(2)} °F`,
    ),
    ...outside(half),
  },
  {
    name: "unit-column",
    about: "The unit stands in a column of its own, in every row.",
    content: lines(
      "Timestamp,Value,Unit",
      warm.map((r) => `${stamp(r)},${r.text},F`),
    ),
    ...outside(warm, "F"),
  },
  {
    name: "unit-words",
    about: "Degrees Celsius in words.",
    content: moments('Timestamp,"Air temperature, degrees Celsius"', half),
    ...outside(half),
  },
  {
    name: "unit-grad",
    about: "Grad Celsius in a title line.",
    zone: BERLIN,
    units: "metric",
    content: lines(
      "Messwerte in Grad Celsius",
      "Datum;Zeit;Temperatur",
      berlin.map((r) => `${dmy(r)};${hm(r)};${comma(r)}`),
    ),
    ...outside(berlin),
  },
  {
    name: "unit-one-sign",
    about: "℃ as one character.",
    content: moments("Timestamp,Temp(℃)", half),
    ...outside(half),
  },
  {
    name: "unit-ordinal-sign",
    about: "The sign of ordinals º in place of the degree sign.",
    content: moments("Timestamp,Temp ºC", half),
    ...outside(half),
  },
  {
    name: "unit-of-reading-twice",
    about: "One sensor in both units: one of the two columns is enough.",
    content: lines(
      "Timestamp,Temp (°C),Temp (°F)",
      half.map((r) => `${stamp(r)},${r.text},${(r.value * 1.8 + 32).toFixed(2)}`),
    ),
    ...outside(half),
  },
  {
    name: "unit-unlikely",
    about:
      "°C in the header, but numbers from 41 to 76: half of them no air on a farm has. Not half a log, and not 58 °C in April: refused.",
    content: moments(
      "Timestamp,Temp (°C)",
      series({ from: "2026-04-17T20:00", every: 30, rows: 48, low: 41, high: 76 }),
    ),
    problem: { code: "log-unit-unlikely", names: ["--unit"] },
  },
  {
    name: "air-among-many",
    about: "Air temperature among dew point, heat index, chill, soil, inside, wind and battery.",
    content: lines(
      "Date,Time,Battery (V),Inside Temp (°F),Dew Point (°F),Outside Temp (°F),Heat Index (°F),Wind Chill (°F),Soil Temp 4 in (°F),Humidity (%),Wind (mph)",
      warm.map((r) =>
        [
          mdy(r),
          twelve(r, " AM", " PM"),
          3.1,
          68.2,
          (r.value - 9).toFixed(1),
          r.text,
          (r.value + 1).toFixed(1),
          (r.value - 2).toFixed(1),
          49.8,
          71,
          4,
        ].join(","),
      ),
    ),
    ...outside(warm, "F"),
  },
  {
    name: "air-among-many-german",
    about: "Außentemperatur among others; the soil stands first.",
    zone: BERLIN,
    units: "metric",
    content: lines(
      "Zeit;Bodentemperatur 5 cm (°C);Taupunkt (°C);Innentemperatur (°C);Außentemperatur (°C);Gefühlte Temperatur (°C);Luftfeuchte (%);Windböe (km/h)",
      berlin.map((r) =>
        [
          `${dmy(r)} ${hm(r)}`,
          "9,9",
          "3,1",
          "20,4",
          comma(r),
          comma({ text: (r.value - 1).toFixed(1) }),
          70,
          12,
        ].join(";"),
      ),
    ),
    ...outside(berlin),
  },
  {
    name: "air-among-many-french",
    about: "Température de l'air among point de rosée, sol, ressentie.",
    zone: "Europe/Paris",
    units: "metric",
    content: lines(
      "Date;Heure;Point de rosée (°C);Température du sol (°C);Température de l'air (°C);Température ressentie (°C);Humidité (%);Vent (km/h)",
      berlin.map((r) =>
        [dmy(r, "/"), hm(r), "3,1", "9,9", comma(r), comma({ text: (r.value - 1).toFixed(1) }), 70, 12].join(
          ";",
        ),
      ),
    ),
    ...outside(berlin),
  },
  {
    name: "air-with-high-and-low",
    about: "Each half hour has its mean, high and low; the plain column counts.",
    content: lines(
      "Timestamp,High Temp (°C),Low Temp (°C),Temp (°C),Hum (%)",
      half.map((r) => `${stamp(r)},${(r.value + 0.4).toFixed(1)},${(r.value - 0.4).toFixed(1)},${r.text},66`),
    ),
    ...outside(half),
  },
  {
    name: "pressure-with-thousands",
    about: 'Pressure as "1,013.2" before the temperature.',
    content: lines(
      "Timestamp,Pressure (hPa),Temp (°C)",
      half.map((r) => `${stamp(r)},"1,0${10 + (r.index % 9)}.2",${r.text}`),
    ),
    ...outside(half),
  },
  {
    name: "short-symbol",
    about: "Ta [°C], Td [°C], Ts [°C]: air, dew, soil.",
    content: lines(
      "time,Ts [°C],Td [°C],Ta [°C]",
      half.map((r) => `${stamp(r)},9.8,2.2,${r.text}`),
    ),
    ...outside(half),
  },
  {
    name: "no-temperature",
    about: "Humidity and dew point only: refused.",
    content: lines(
      "Timestamp,Humidity (%),Dew point (°C)",
      half.map((r) => `${stamp(r)},66,${(r.value - 6).toFixed(1)}`),
    ),
    problem: { code: ["log-temperature-missing", "log-header-missing"], names: ["temperature"] },
  },
  {
    name: "two-sensors",
    about: "Two columns named like the farm's two sensors: each goes to its own.",
    sensors: probes,
    content: lines(
      "Timestamp,Outside (°C),Tunnel 1 (°C)",
      half.map((r, index) => `${stamp(r)},${r.text},${tunnel[index].text}`),
    ),
    hours: { outside: hours(half), "tunnel-1": hours(tunnel) },
  },
  {
    name: "two-sensors-gaps",
    about: "The same; each column has readings missing where the other has none.",
    sensors: probes,
    content: lines(
      "Timestamp,Temp Tunnel-1 (°C),Temp outside (°C)",
      half.map(
        (r, index) =>
          `${stamp(r)},${index % 6 === 1 ? "" : tunnel[index].text},${index % 6 === 4 ? "" : r.text}`,
      ),
    ),
    hours: {
      outside: hours(half.filter((_, index) => index % 6 !== 4)),
      "tunnel-1": hours(tunnel.filter((_, index) => index % 6 !== 1)),
    },
  },
  {
    name: "two-sensors-two-units",
    about: "One column in °C, the other in °F.",
    sensors: probes,
    content: lines(
      "Timestamp,outside °C,tunnel-1 °F",
      half.map((r, index) => `${stamp(r)},${r.text},${warm[index].text}`),
    ),
    hours: { outside: hours(half), "tunnel-1": hours(warm, "F") },
  },
  {
    name: "two-columns-unknown",
    about: "Two columns of air temperature, neither named like a sensor of the farm: refused, never mixed.",
    content: lines(
      "Timestamp,Probe A (°C),Probe B (°C)",
      half.map((r, index) => `${stamp(r)},${r.text},${tunnel[index].text}`),
    ),
    problem: { code: "log-columns-several", line: 1, names: ["--column", "Probe A", "Probe B"] },
  },
  {
    name: "two-columns-option",
    about: "The grower names the column.",
    args: ["--column", "Probe B (°C)"],
    content: lines(
      "Timestamp,Probe A (°C),Probe B (°C)",
      half.map((r, index) => `${stamp(r)},${r.text},${tunnel[index].text}`),
    ),
    ...outside(tunnel),
  },
  {
    name: "two-columns-option-short",
    about: "The grower writes the column's name without its unit and in small letters.",
    args: ["--column", "probe b"],
    content: lines(
      "Timestamp,Probe A (°C),Probe B (°C)",
      half.map((r, index) => `${stamp(r)},${r.text},${tunnel[index].text}`),
    ),
    ...outside(tunnel),
  },
  {
    name: "column-option-unknown",
    about: "The grower names a column the file has not: refused, with the names there are.",
    args: ["--column", "Probe C"],
    content: lines(
      "Timestamp,Probe A (°C),Probe B (°C)",
      half.map((r, index) => `${stamp(r)},${r.text},${tunnel[index].text}`),
    ),
    problem: { names: ["Probe A", "Probe B"] },
  },
  {
    name: "sensor-option",
    about: "Two sensors on the farm, one temperature in the file, and the grower says whose.",
    sensors: probes,
    args: ["--sensor", "tunnel-1"],
    content: moments("Timestamp,Temp (°C)", tunnel),
    hours: { "tunnel-1": hours(tunnel) },
    read: all(tunnel),
  },
  {
    name: "sensor-not-said",
    about: "Two sensors on the farm, one temperature in the file, and nobody says whose: refused.",
    sensors: probes,
    content: moments("Timestamp,Temp (°C)", tunnel),
    problem: { names: ["--sensor", "outside", "tunnel-1"] },
  },
  {
    name: "inside-is-another-sensor",
    about: "Outside and inside: of a farm with one sensor in the open, the outside is meant.",
    content: lines(
      "Timestamp,Indoor (°C),Outdoor (°C)",
      half.map((r) => `${stamp(r)},19.4,${r.text}`),
    ),
    ...outside(half),
  },
  {
    name: "stations-in-rows",
    about: "A column tells the station, and the stations are named like the farm's sensors.",
    sensors: probes,
    content: lines(
      "Station,Timestamp,Temp (°C)",
      half.map((r, index) => [`outside,${stamp(r)},${r.text}`, `tunnel-1,${stamp(r)},${tunnel[index].text}`]),
    ),
    hours: { outside: hours(half), "tunnel-1": hours(tunnel) },
  },
  {
    name: "stations-in-rows-one-after-the-other",
    about: "First all rows of one station, then all of the other.",
    sensors: probes,
    content: lines(
      "Timestamp;Temp (°C);Device",
      half.map((r) => `${stamp(r)};${comma(r)};Outside`),
      tunnel.map((r) => `${stamp(r)};${comma(r)};Tunnel 1`),
    ),
    hours: { outside: hours(half), "tunnel-1": hours(tunnel) },
  },
  {
    name: "stations-in-rows-unknown",
    about: "Two stations in the rows that the farm does not know: refused, never mixed.",
    content: lines(
      "station_id,timestamp,temp_c",
      half.map((r, index) => [`4401,${stamp(r)},${r.text}`, `4402,${stamp(r)},${tunnel[index].text}`]),
    ),
    problem: { code: "log-stations-several", names: ["4401", "4402", "sensor"] },
  },
  {
    name: "stations-in-rows-sensor-option",
    about: "Three stations, and the grower wants the one named like the sensor he says.",
    sensors: probes,
    args: ["--sensor", "tunnel-1"],
    content: lines(
      "Station,Timestamp,Temp (°C)",
      half.map((r, index) => [
        `outside,${stamp(r)},${r.text}`,
        `tunnel-1,${stamp(r)},${tunnel[index].text}`,
        `cellar,${stamp(r)},11.0`,
      ]),
    ),
    hours: { "tunnel-1": hours(tunnel) },
  },
  {
    name: "one-station-in-rows",
    about: "A column tells the station, and it is always the same: no question arises.",
    content: lines(
      "station_id,timestamp,temp_c",
      half.map((r) => `4401,${stamp(r)},${r.text}`),
    ),
    ...outside(half),
  },
  {
    name: "two-sensors-unlabelled",
    about:
      "Every time comes twice with another temperature, and nothing tells the two apart: refused, never mixed.",
    content: lines(
      "Timestamp,Temp (°C)",
      half.map((r, index) => [`${stamp(r)},${r.text}`, `${stamp(r)},${tunnel[index].text}`]),
    ),
    problem: { code: ["log-stations-several", "log-times-twice"], names: ["twice"] },
  },
  broken(
    "missing-words",
    "Every word for nothing.",
    hourly,
    ["", "---", "M", "NA", "NaN", "null", "no data", "*", "n/a", "#N/A", "-", "nodata", "–", "MISSING", "."],
    { reason: "noReading" },
  ),
  broken("missing-numbers", "Numbers that stand for nothing.", hourly, [
    "-9999",
    "9999",
    "-999.9",
    "-99.9",
    "32767",
    "-32768",
    "-9999.00",
    "999.9",
    "-999",
    "-7999",
    "6999",
    "-99.99",
    "99999.9",
    "-888.8",
    "3276.7",
  ]),
  broken(
    "missing-fahrenheit",
    "Numbers that stand for nothing, in °F; -999 is −573 °C.",
    series({ from: "2026-04-16T18:00", every: 60, rows: 30, low: 41, high: 62 }),
    ["-999", "-9999", "9999", "999.9", "-99.9", "32767"],
    { header: "Timestamp,Temp (°F)", unit: "F" },
  ),
  broken(
    "probe-broken",
    "A probe's 85.0 after power-up, −127 when unplugged, and other dead values.",
    series({ from: "2026-04-17T20:00", every: 10, rows: 36 }),
    ["85.0", "-127", "-127.00", "85", "-242.0", "127.9", "-55.1E3", "150.0"],
  ),
  broken(
    "probe-broken-fahrenheit",
    "The same through a converter: 185 °F and −196.6 °F.",
    series({ from: "2026-04-17T20:00", every: 10, rows: 36, low: 41, high: 62 }),
    ["185.0", "-196.6", "185", "-196.60"],
    { header: "Timestamp,Temp (°F)", unit: "F" },
  ),
  broken("error-words", "Words of an instrument in trouble, and a spreadsheet's.", hourly, [
    "Error",
    "OL",
    "sensor fail",
    "#VALUE!",
    "########",
    "overrange",
    "LO",
    "HI",
  ]),
  broken("limits", "Below or above what the probe measures: a limit is no reading.", hourly, [
    "<2.0",
    "< 2.0",
    ">40",
    "≤2",
  ]),
  {
    name: "flags-behind-numbers",
    about: "Flags behind the numbers, explained below: accepted, estimated.",
    content: lines(
      "Timestamp,Temp (°C)",
      half.map((r) => `${stamp(r)},${r.text}${["A", "A", " A", "E"][r.index % 4]}`),
      "A = accepted",
      "E = estimated",
    ),
    hours: { outside: hours(half) },
    read: { used: 24 },
  },
  {
    name: "flag-column",
    about: "A column of flags named after the temperature: Temp QC holds digits and is no temperature.",
    content: lines(
      "Timestamp,Temp (°C),Temp QC,RH,RH QC",
      half.map((r) => `${stamp(r)},${r.text},1,66,1`),
    ),
    ...outside(half),
  },
  {
    name: "minus-signs",
    about: "Every kind of minus, a plus, a bare point.",
    content: lines(
      "Timestamp,Temp (°C)",
      "2026-02-17 20:00,-3.2",
      "2026-02-17 21:00,−3.4",
      "2026-02-17 22:00,–3.6",
      "2026-02-17 23:00,- 3.8",
      "2026-02-18 00:00,-.8",
      "2026-02-18 01:00,+0.4",
      "2026-02-18 02:00,-0.0",
      "2026-02-18 03:00,.6",
    ),
    hours: {
      outside: hours(
        ["20", "21", "22", "23", "24", "25", "26", "27"].map((hour, index) =>
          reading(
            NEW_YORK,
            `2026-02-${Number(hour) < 24 ? "17" : "18"}T${String(Number(hour) % 24).padStart(2, "0")}:00`,
            [-3.2, -3.4, -3.6, -3.8, -0.8, 0.4, 0, 0.6][index],
          ),
        ),
      ),
    },
    read: { rows: 8, used: 8 },
  },
  {
    name: "powers-of-ten",
    about: "1.23E+01.",
    content: moments("Timestamp,Temp (°C)", half, (r) => `${(r.value / 10).toFixed(3)}E+01`),
    ...outside(half),
  },
  {
    name: "many-decimals",
    about: "A program's numbers with fifteen places.",
    content: moments("Timestamp,Temp (°C)", half, (r) => (r.value + 0.0000000000004).toFixed(15)),
    ...outside(half),
  },
  {
    name: "one-spike",
    about: "A single jump of 29 °C and back within ten minutes is no weather.",
    content: moments("Timestamp,Temp (°C)", series({ from: "2026-04-17T20:00", every: 5, rows: 36 }), (r) =>
      r.index === 17 ? "41.3" : r.text,
    ),
    hours: {
      outside: hours(
        series({ from: "2026-04-17T20:00", every: 5, rows: 36 }).filter(({ index }) => index !== 17),
      ),
    },
    read: { rows: 36, used: 35, dropped: { spike: 1 } },
  },
  {
    name: "six-hourly-swings",
    about: "Every six hours, with a swing of 24 °C between night and day: all weather.",
    zone: "America/Denver",
    content: lines(
      "Date,Time,Temp (°C)",
      series({
        zone: "America/Denver",
        from: "2026-04-13T03:00",
        every: 360,
        rows: 24,
        low: -3,
        high: 21,
      }).map((r) => `${ymd(r)},${hm(r)},${r.text}`),
    ),
    ...outside(
      series({ zone: "America/Denver", from: "2026-04-13T03:00", every: 360, rows: 24, low: -3, high: 21 }),
    ),
  },

  {
    name: "unit-option-over-header",
    about: "The header says °C for numbers in °F; the grower's word counts more.",
    args: ["--unit", "F"],
    content: moments("Timestamp,Temp (°C)", warm),
    ...outside(warm, "F"),
  },
  {
    name: "unit-as-name",
    about: "The columns are named by their units alone.",
    zone: BERLIN,
    units: "metric",
    content: lines(
      "Datum;Zeit;%rF;°C;hPa",
      berlin.map((r) => `${dmy(r)};${hm(r)};${60 + (r.index % 8)},5;${comma(r)};1013,2`),
    ),
    ...outside(berlin),
  },
  {
    name: "short-words-french",
    about: "T ext and T int: the outer one.",
    zone: "Europe/Paris",
    units: "metric",
    content: lines(
      "Date;Heure;T int (°C);T ext (°C);HR (%)",
      berlin.map((r) => `${dmy(r, "/")};${hm(r)};19,5;${comma(r)};61`),
    ),
    ...outside(berlin),
  },
  {
    name: "alarm-limits",
    about: "High and low alarm stand in every row.",
    content: lines(
      "Date,Time,High alarm (°C),Low alarm (°C),Temperature (°C)",
      half.map((r) => `${ymd(r)},${hm(r)},30.0,2.0,${r.text}`),
    ),
    ...outside(half),
  },
  {
    name: "title-like-a-header",
    about: "A title line that holds the words date and temperature, and the unit of all numbers.",
    content: lines(
      "Date of export,2026-04-19,Temperature unit,°F",
      "Date,Time,Temp,Hum",
      warm.map((r) => `${ymd(r)},${hm(r)},${r.text},61`),
    ),
    ...outside(warm, "F"),
  },
];
