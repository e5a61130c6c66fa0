import { list } from "../problem/index.ts";
import { type Celsius, groupBy } from "../quantity/index.ts";
import type { FrostedBed } from "../watch/index.ts";
import type { Names } from "./names.ts";
import { capital, odds } from "./words.ts";

/** From here on a loss is probable; below `HARDLY` a risk is not worth a number. [0–1] */
export const LIKELY = 0.5;
export const HARDLY = 0.01;

/** A tunnel's beds in one night of frost. */
export interface Frosted {
  readonly name: string;
  readonly expected: Celsius;
  readonly beds: readonly FrostedBed[];
}

const isStubble = ({ of }: FrostedBed): boolean => of === "stubble";

/** Behind what is said of a tunnel: nothing is meant but what grows again after a cut. */
export const onlyRegrowth = ({ beds }: Pick<Frosted, "beds">): string =>
  beds.every(isStubble) ? " (regrowth)" : "";

/** Beds by name, their leaves or what grows again of them. */
const bedNames = (beds: readonly FrostedBed[], names: Names): string =>
  `${beds.some(isStubble) ? "the regrowth of the " : ""}${list(beds.map(({ succession }) => names.succession(succession)))}`;

/** Beds of tunnels, those of one tunnel and one chance together: "kale (S05) in Pond 1 (2 in 5); the regrowth of the arugula (S02) in Pond 1 (1 in 5)". */
const withOdds = (told: readonly Frosted[], harmed: (bed: FrostedBed) => boolean, names: Names): string[] =>
  told.flatMap(({ name, beds }) =>
    [...groupBy(beds.filter(harmed), ({ of, risk }) => `${of} ${odds(risk)}`).values()]
      .sort(([a], [b]) => b!.risk - a!.risk)
      .map((same) => `${bedNames(same, names)} in ${name} (${odds(same[0]!.risk)})`),
  );

/** Which beds are probably harmed, each by its own risk; and what else is at risk beside one of them. */
export function probablyHarmed(told: readonly Frosted[], names: Names): readonly string[] {
  const sentence = (begins: string, which: readonly string[]): readonly string[] =>
    which.length === 0 ? [] : [`${begins}: ${which.join("; ")}.`];
  const near = told.filter(({ beds }) => beds.some(({ risk }) => risk >= LIKELY));
  return [
    ...sentence(
      "Probably lost even with the plan",
      near.flatMap((each) =>
        withOdds([each], (bed) => bed.risk >= LIKELY && (isStubble(bed) || each.expected <= bed.kill), names),
      ),
    ),
    ...sentence(
      "Leaves probably marked even with the plan",
      near.flatMap((each) =>
        withOdds([each], (bed) => bed.risk >= LIKELY && !isStubble(bed) && each.expected > bed.kill, names),
      ),
    ),
    ...sentence(
      "Also at risk",
      withOdds(near, ({ risk }) => risk >= HARDLY && risk < LIKELY, names),
    ),
  ];
}

/** Below what leaves are unfit and regrowth dies, as whole sentences. @param temperature - In words. */
export function limitsOf(
  { beds }: Pick<Frosted, "beds">,
  unfit: Celsius,
  names: Names,
  temperature: (value: Celsius) => string,
): string {
  const [leaves, stubble] = [beds.filter((bed) => !isStubble(bed)), beds.filter(isStubble)];
  return [
    ...(leaves.length === 0
      ? []
      : [`Leaves of ${bedNames(leaves, names)} are unfit below ${temperature(unfit)}.`]),
    ...(stubble.length === 0
      ? []
      : [
          `${capital(bedNames(stubble, names))} dies below ${temperature(Math.max(...stubble.map(({ kill }) => kill)) as Celsius)}.`,
        ]),
  ].join(" ");
}
