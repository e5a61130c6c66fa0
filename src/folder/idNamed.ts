/** A name without regard to case, apostrophes and how its words are joined. */
export const plainName = (name: string): string =>
  name
    .toLowerCase()
    .replace(/['’]/gu, "")
    .replace(/[\s_-]+/gu, " ")
    .trim();

/** The id of what is called so, by its id or its name; null for none. @example idNamed("Row cover 19", covers) // => "row-cover-19" */
export function idNamed(name: string, known: ReadonlyMap<string, { readonly name: string }>): string | null {
  const asked = plainName(name);
  return (
    [...known].find(([id, value]) => plainName(id) === asked || plainName(value.name) === asked)?.[0] ?? null
  );
}
