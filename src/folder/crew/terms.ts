import { catalogue, type Farm } from "../../farm/index.ts";
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

/** Names by id; the ids themselves where two names could not be told apart. */
function distinct(named: readonly Named[]): ReadonlyMap<string, string> {
  const apart = new Set(named.map(({ name }) => letters(name))).size === named.length;
  return new Map(named.map(({ id, name }) => [id, apart ? name : id]));
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

export function crewTerms(farm: Farm, language: CrewLanguage): CrewTerms {
  const known = catalogue();
  return {
    tunnels: distinct(farm.tunnels),
    covers: distinct(termed(farm.covers, known.covers, language.covers)),
    crops: new Map(termed(farm.crops, known.crops, language.crops).map(({ id, name }) => [id, name])),
  };
}
