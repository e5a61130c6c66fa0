import type { Outcome } from "../decide/index.ts";
import { list } from "../problem/index.ts";
import { HARDLY, LIKELY, limitsOf, onlyRegrowth, probablyHarmed } from "./frostedBeds.ts";
import type { Names } from "./names.ts";
import type { Urgent } from "./warned.ts";
import { lowest, noCloth, type Of, riskiest, riskLeft, underPlan, worst } from "./warned.ts";
import { day, dayOfMonth, night, odds, temperature } from "./words.ts";

/** Frost of one night, or of several nights of little risk. */
export function frostTold(group: readonly Of<"frost">[], outcome: Outcome, names: Names): Urgent {
  const { units } = outcome.farm;
  const dates = [...new Set(group.map(({ date }) => date))].sort();
  const told = group
    .map((warning) => {
      const { date, tunnel } = warning;
      const name = names.tunnel(tunnel);
      const harmed = name + onlyRegrowth(warning);
      return {
        ...warning,
        under: underPlan(warning, "evening", outcome, names),
        name,
        harmed,
        head: dates.length === 1 ? harmed : `${harmed}, ${day(units, date)}`,
        risked: odds(warning.risk),
      };
    })
    .sort((a, b) => b.risk - a.risk);
  const probable = told.filter(({ risk }) => risk >= LIKELY);
  const possible = riskiest(
    told
      .filter(({ risk }) => risk >= HARDLY && risk < LIKELY)
      .map((each) => ({ ...each, name: each.harmed })),
  );
  const unpromised = told.filter(({ risk, promised, unfit }) => risk < HARDLY && promised < unfit);
  const windy = told.filter(({ windy }) => windy);
  const when = list(dates.map((date) => day(units, date)));
  const cold = temperature(units, lowest(group.map(({ bare }) => bare)));
  return {
    kind: "frost",
    severity: worst(group),
    date: dates[0]!,
    when,
    brief: `Frost ${list(dates.map(dayOfMonth))}, night: ${cold}`,
    heading:
      dates.length === 1
        ? `Frost in ${night(units, dates[0]!)}: down to ${cold} at the crop with nothing on.`
        : `More frost in the nights that begin on ${when}: down to ${cold} at the crop with nothing on.`,
    columns: ["Tunnel", "On it that night", "Expected", "Promised", "Unfit below", "Risk left"],
    rows: told.map(({ tunnel, beds, head, under, expected, promised, unfit, risked }) => ({
      tunnel,
      cells: [
        head,
        under,
        temperature(units, expected),
        temperature(units, promised),
        temperature(units, unfit),
        risked,
      ],
      sentence: `${head}, ${under}: ${temperature(units, expected)} expected at the crop, ${temperature(units, promised)} promised. ${limitsOf({ beds }, unfit, names, (value) => temperature(units, value))} Risk left: ${risked}.`,
    })),
    open: true,
    inShort: possible.length === 0 ? null : riskLeft(possible),
    follows: [
      ...probablyHarmed(told, names),
      ...noCloth(
        told.filter(({ risk }) => risk >= HARDLY),
        names,
      ),
      ...(unpromised.length === 0
        ? []
        : [
            `${list(riskiest(unpromised).map(({ name }) => name))} should come through, but what is on cannot promise it.`,
          ]),
      ...(probable.length + possible.length + unpromised.length === 0
        ? ["With the plan hardly any risk is left."]
        : []),
      ...(windy.length === 0
        ? []
        : [
            windy.length === told.length
              ? "That evening is too windy to put cloth on: what is to help must lie there from an earlier walk."
              : `That evening is too windy to put cloth on: what is to help ${list(windy.map(({ name }) => name))} must lie there from an earlier walk.`,
          ]),
    ],
  };
}
