import type { SettingGroup } from "./settingReader.ts";

/** Names an entry of a list and sees that no two are called the same. */
export function identity(group: SettingGroup, what: string, taken: Set<string>): string | null {
  const setting = group.need("id", `a short name for the ${what}`);
  const id = setting?.text(`a short name for the ${what}`) ?? null;
  if (id === null) return null;
  if (/\s/u.test(id))
    return setting!.fault(
      "id-with-blank",
      "a short name without blanks",
      "Use - instead; the name may be long.",
    );
  if (taken.has(id))
    return setting!.fault("id-twice", `a name no other ${what} has`, "Call one of the two differently.");
  taken.add(id);
  return id;
}
