import type { Tunnel } from "../farm/index.ts";
import { type Metre, metre } from "../quantity/index.ts";
import { shownLength, type Units } from "./faults.ts";
import { identity } from "./identity.ts";
import type { Setting } from "./settingReader.ts";

/** As much as a tape measure errs along a tunnel. [m] */
const TAPE = 0.1;

/** Where the sections of a tunnel begin, and last where it ends; null when they do not make it up. [m] */
function borders(setting: Setting, length: Metre, units: Units): readonly Metre[] | null {
  if (setting.form !== "list") {
    const count = setting.number("a number of sections", 1, 20, "whole");
    return count === null ? null : Array.from({ length: count + 1 }, (_, i) => metre((length * i) / count));
  }
  const entries = setting.list();
  const lengths = entries.flatMap((entry) => {
    const part = entry.quantity("length");
    if (part !== null && part <= 0)
      entry.fault("length-not-positive", "a length above zero", "Measure the section along its beds.");
    return part === null || part <= 0 ? [] : [part];
  });
  if (lengths.length < entries.length) return null;
  const ends: Metre[] = [metre(0)];
  for (const part of lengths) ends.push(metre(ends.at(-1)! + part));
  const sum = ends.at(-1)!;
  return Math.abs(sum - length) <= TAPE
    ? [...ends.slice(0, -1), length]
    : setting.fault(
        "sections-not-whole",
        `sections that come to ${shownLength(length, units)}, the length of the tunnel`,
        `They come to ${shownLength(sum, units)}; correct one of them or the tunnel.`,
      );
}

/** A long tunnel as the sections that are covered each for itself; a whole one as itself. */
function inSections(whole: Tunnel, ends: readonly Metre[]): readonly Tunnel[] {
  if (ends.length <= 2) return [whole];
  const { id, name } = whole;
  return ends.slice(0, -1).map((from, i) => ({
    ...whole,
    id: `${id}-${i + 1}`,
    name: `${name}, part ${i + 1}`,
    length: metre(ends[i + 1]! - from),
    section: { of: id, name, from },
  }));
}

/**
 * The tunnels, a long one that is covered in parts as its sections.
 *
 * @param taken - Receives every id, also of an entry that is not sound otherwise: names are known all the same.
 */
export function tunnelsSetting(setting: Setting | null, taken: Set<string>, units: Units): readonly Tunnel[] {
  return (setting?.list() ?? []).flatMap((entry) => {
    const group = entry.settings(["id", "name", "length", "hoops", "beds", "sections"]);
    if (group === null) return [];
    const id = identity(group, "tunnel", taken);
    const name = group.get("name")?.text("the tunnel's name") ?? id;
    const lengthSetting = group.need("length", "a length like 50 ft");
    const measured = lengthSetting?.quantity("length") ?? null;
    const length =
      measured !== null && measured <= 0
        ? lengthSetting!.fault(
            "length-not-positive",
            "a length above zero",
            "Measure the tunnel along its beds.",
          )
        : measured;
    const hoops = group
      .need("hoops", "wire, conduit, pvc or none")
      ?.oneOf(["wire", "conduit", "pvc", "none"] as const);
    const bedSetting = group.get("beds");
    const beds = bedSetting === null ? 1 : bedSetting.number("a number of beds", 1, 20, "whole");
    if (
      id === null ||
      name === null ||
      length === null ||
      hoops === null ||
      hoops === undefined ||
      beds === null
    )
      return [];
    const sections = group.get("sections");
    const ends = sections === null ? [] : borders(sections, length, units);
    if (ends === null) return [];
    const parts = inSections({ id, name, length, hoops: hoops === "none" ? null : hoops, beds }, ends);
    for (const part of parts) {
      if (part.id !== id && taken.has(part.id))
        group
          .get("sections")!
          .fault("id-twice", `names no other tunnel has, as ${part.id}`, "Call the other one differently.");
      taken.add(part.id);
    }
    return parts;
  });
}
