import { catalogue } from "../../../src/farm/index.ts";
import { lightOnWeight, lightShare, response } from "../../../src/growth/index.ts";
import chamber from "../../published/chamber-days.json" with { type: "json" };
import type { Check, Subject } from "./check.ts";

const { crops, settings } = catalogue();

/** The catalogue's crop of each row. */
const ROWS = [
  ["lettuce", "lettuce-mix"],
  ["mizuna", "mizuna"],
  ["collards", "kale"],
  ["pak choi", "baby-pak-choi"],
] as const;

/** The chamber's temperature was not seen; the catalogue assumes this one. [°C] */
const ASSUMED = 22;
/** Another it could have had. [°C] */
const COLDER = 16;
const mizuna = crops.get("mizuna")!.growth;

const rowOf = (name: string): (typeof chamber.rows)[number] =>
  chamber.rows.find(({ crop }) => crop === name)!;

/** [MJ/m²] */
const radiation = (light: number): number => light / settings.lightPerMegajoule;

/** Least squares of days = t0·(1 + g/R): straight in 1/R. */
function fitted(days: readonly number[]): { readonly t0: number; readonly g: number } {
  const xs = chamber.dli.map((light) => 1 / radiation(light));
  const mean = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / values.length;
  const [mx, my] = [mean(xs), mean(days)];
  const slope =
    xs.reduce((sum, x, i) => sum + (x - mx) * (days[i]! - my), 0) /
    xs.reduce((sum, x) => sum + (x - mx) ** 2, 0);
  const t0 = my - slope * mx;
  return { t0, g: slope / t0 };
}

/** Days at each light by the model: one number a crop, its days in endless light, is taken from the table; the light is not. */
function daysOf(id: string, days: readonly number[]): readonly number[] {
  const { growth, lightOnPace } = crops.get(id)!;
  const aDay = response(ASSUMED, growth);
  const shares = chamber.dli.map((light) => lightShare(aDay, radiation(light), lightOnPace));
  const endless = days.reduce((sum, each, i) => sum + each * shares[i]!, 0) / days.length;
  return shares.map((share) => endless / share);
}

/** What the best curve of this form leaves. [d] */
const residuals = (days: readonly number[]): readonly number[] => {
  const { t0, g } = fitted(days);
  return days.map((day, i) => day - t0 * (1 + g / radiation(chamber.dli[i]!)));
};

const rms = (values: readonly number[]): number =>
  Math.sqrt(values.reduce((sum, each) => sum + each ** 2, 0) / values.length);

export const chamberDays: Subject = {
  name: "Days in the chamber by light, Gagne and Mattson",
  checks: ROWS.flatMap(([row, id]): readonly Check[] => {
    const { days } = rowOf(row);
    const most = Math.max(...residuals(days).map(Math.abs));
    return [
      ...chamber.dli.map(
        (light, i): Check => ({
          what: `${row} at ${light} mol/m²`,
          source: "gagneMattson2019",
          unit: "d",
          published: days[i]!,
          ours: () => daysOf(id, days)[i]!,
          tolerance: Number((most + 0.1).toFixed(2)),
          why: "the largest residual of the best curve of this form, and a printed digit",
        }),
      ),
      {
        what: `${row}: root mean square of ours less the table`,
        source: "gagneMattson2019",
        unit: "d",
        published: 0,
        ours: () => rms(daysOf(id, days).map((day, i) => day - days[i]!)),
        tolerance: 1,
        why: "a day: growers cut on days",
      },
    ];
  }),
  findings: () => [
    ...ROWS.map(([row, id]) => {
      const { days } = rowOf(row);
      const { t0, g } = fitted(days);
      const { growth, lightOnPace } = crops.get(id)!;
      const left = residuals(days);
      return `${row.padEnd(9)} least squares t0 ${t0.toFixed(2)} d, g = f·D ${g.toFixed(3)} MJ/m², so f ${(g / response(ASSUMED, growth)).toFixed(3)} at an assumed ${ASSUMED} °C (catalogue ${lightOnPace}); residuals ${left.map((each) => each.toFixed(1)).join(" ")} d, RMS ${rms(left).toFixed(2)} d.`;
    }),
    `Only the product f·D can be known from days at several lights and one temperature. f alone rests on the assumed ${ASSUMED} °C: were it ${COLDER} °C, mizuna's would be ${Math.round((response(ASSUMED, mizuna) / response(COLDER, mizuna) - 1) * 100)} % larger.`,
    "Pak choi took longer at 18 than at 12 mol: no curve that falls with light comes nearer than half of that 1.2 d.",
    "Lettuce shows no effect of light on days: its fitted f is below nothing and set to 0.",
  ],
};

export const chamberWeights: Subject = {
  name: "Weight in the chamber by light, Gagne and Mattson",
  checks: ROWS.flatMap(([row, id]) => {
    const { weight } = rowOf(row);
    const full = chamber.dli.findIndex((light) => light >= settings.fullLight);
    const of = (light: number): number => lightOnWeight(light, crops.get(id)!, settings);
    return chamber.dli.slice(0, full).map(
      (light, i): Check => ({
        what: `${row} at ${light} mol/m², share of the weight at ${chamber.dli[full]}`,
        source: "gagneMattson2019",
        unit: "1",
        published: weight[i]! / weight[full]!,
        ours: () => of(light) / of(chamber.dli[full]!),
        tolerance: Number(((0.25 * weight[i]!) / weight[full]!).toFixed(3)),
        why: "a quarter: one power of light for all of the range",
      }),
    );
  }),
};
