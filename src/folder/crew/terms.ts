import type { Catalogue, Farm } from "../../farm/index.ts";
import { groupBy } from "../../quantity/index.ts";
import { plainSigns } from "../noteText.ts";
import type { CrewLanguage } from "./language.ts";
import { filled, letters } from "./sentence.ts";

/** What tunnels, covers and crops are called on a card, by id. */
export interface CrewTerms {
  readonly tunnels: ReadonlyMap<string, string>;
  readonly covers: ReadonlyMap<string, string>;
  readonly crops: ReadonlyMap<string, string>;
}

interface Named {
  readonly id: string;
  readonly name: string;
}

/** What two names are told apart by in an answer: no case, no accents, no punctuation at the end. */
export const nameKey = (name: string): string => letters(plainSigns(name)).replace(/[\s.,;:!]+$/u, "");

/** Names by id; the id itself where a name would be taken for another one. */
function distinct(named: readonly Named[]): ReadonlyMap<string, string> {
  const takes = groupBy(
    named.flatMap(({ id, name }) => [...new Set([nameKey(id), nameKey(name)])]),
    (key) => key,
  );
  const apart = ({ name }: Named): boolean => takes.get(nameKey(name))!.length === 1;
  return new Map(named.map((one) => [one.id, apart(one) ? one.name : one.id]));
}

/** A language's terms for what bears its catalogue name; a farm's own name stays as typed. */
function termed(
  own: Farm["covers"] | Farm["crops"],
  known: Farm["covers"] | Farm["crops"],
  terms: Readonly<Record<string, string>>,
): readonly Named[] {
  return [...own.values()].map(({ id, name }) => {
    const term = known.get(id)?.name === name ? terms[id] : undefined;
    return { id, name: term === undefined ? name : filled(term, {}) };
  });
}

/** Tunnels stand in a list, where a name with a comma would be taken for two. */
const listable = ({ id, name }: Named): Named => ({ id, name: name.includes(",") ? id : name });

/** @param known - The catalogue, whose names the languages have terms for. */
export function crewTerms(
  farm: Farm,
  language: CrewLanguage,
  known: Pick<Catalogue, "covers" | "crops">,
): CrewTerms {
  return {
    tunnels: distinct(farm.tunnels.map(listable)),
    covers: distinct(termed(farm.covers, known.covers, language.covers)),
    crops: new Map(termed(farm.crops, known.crops, language.crops).map(({ id, name }) => [id, name])),
  };
}
