import type { Succession, Tunnel } from "../farm/index.ts";
import { list, type Problem } from "../problem/index.ts";
import { type Metre, metre } from "../quantity/index.ts";
import { TOUCH } from "./beds.ts";
import type { FarmSettings } from "./farmFile.ts";
import { shownLength } from "./faults.ts";
import type { Draft, Placed } from "./successionsFile.ts";

type Bed = Draft<Succession>;

/** Where a section lies in its tunnel. [m] */
const begins = ({ section }: Tunnel): number => section?.from ?? 0;
const ends = (tunnel: Tunnel): number => begins(tunnel) + tunnel.length;

/** The sections of the long tunnel a bed names; none when it names one that is covered as a whole, or a section. */
const sectionsOf = ({ tunnel }: Bed, tunnels: readonly Tunnel[]): readonly Tunnel[] =>
  tunnels.filter(({ section }) => section !== undefined && section.of === tunnel);

/** A bed measured along the whole of a long tunnel, at its place in the section it lies in; null across a border. */
function inSection<Any extends Bed>(bed: Any, tunnels: readonly Tunnel[]): Any | null {
  const sections = sectionsOf(bed, tunnels);
  if (sections.length === 0) return bed;
  const { from, to } = bed;
  const within = sections.find(
    (section) => (from ?? to ?? 0) >= begins(section) - TOUCH && (to ?? from ?? 0) <= ends(section) + TOUCH,
  );
  if (within === undefined) return null;
  const place = (along: Metre | null): Metre | null =>
    along === null ? null : metre(Math.min(within.length, Math.max(0, along - begins(within))));
  return { ...bed, tunnel: within.id, from: place(from), to: place(to) };
}

function across(file: string, { value, line }: Placed<Bed>, { tunnels, units }: FarmSettings): Problem {
  const { from, to } = value;
  const sections = sectionsOf(value, tunnels);
  const shown = (along: number): string => shownLength(metre(along), units);
  const stretch = (low: number, high: number): string => `${shown(low)} to ${shown(high)}`;
  const last = ends(sections.at(-1)!);
  const { of } = sections[0]!.section!;
  const problem = { file, line, weight: "stops" as const };
  if ((to ?? 0) > last + TOUCH)
    return {
      ...problem,
      code: "bed-beyond-tunnel",
      column: "to",
      expected: `at most ${shown(last)}, the length of ${of}`,
      received: shown(to ?? 0),
      hint: "Correct the bed here or the tunnel's length in farm.yaml.",
    };
  const crossed = sections.map(begins).filter((border) => border > (from ?? 0) && border < (to ?? 0));
  return {
    ...problem,
    code: "bed-across-sections",
    column: "from",
    expected: `a bed within one part of ${of}: ${list(
      sections.map((section) => stretch(begins(section), ends(section))),
      "or",
    )}`,
    received: stretch(from ?? 0, to ?? 0),
    hint: `Write it as ${crossed.length + 1} lines that meet at ${list(crossed.map(shown))}, each with its own id.`,
  };
}

/** Gives each bed that names a long tunnel to the section it lies in. One that lies across a border is in no tunnel. */
export function bedSections(
  file: string,
  sown: {
    readonly successions: readonly Placed<Succession>[];
    readonly drafts: readonly Placed<Bed>[];
  },
  farm: FarmSettings,
): typeof sown & { readonly problems: readonly Problem[] } {
  const { tunnels } = farm;
  return {
    successions: sown.successions.flatMap(({ value, line }) => {
      const bed = inSection(value, tunnels);
      return bed === null ? [] : [{ value: bed, line }];
    }),
    drafts: sown.drafts.map(({ value, line }) => ({
      value: inSection(value, tunnels) ?? { ...value, tunnel: null },
      line,
    })),
    problems: sown.drafts
      .filter(({ value }) => inSection(value, tunnels) === null)
      .map((draft) => across(file, draft, farm)),
  };
}
