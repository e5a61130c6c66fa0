import type { Note } from "../farm/index.ts";
import { kilogram, localDate } from "../quantity/index.ts";
import { amountsOf } from "./noteAmount.ts";
import type { NoteMoment } from "./noteMoment.ts";
import type { Kind, Parts, Role } from "./noteParts.ts";
import { type Misreading, misread, type NoteSetting, notKnown } from "./noteRead.ts";
import { LONGEST } from "./notesFile.ts";

/** Words of the trade that may stand in a note of each kind. */
const MAY_SAY: Readonly<Record<Exclude<Kind, "cover">, readonly Role[]>> = {
  leaf: [],
  emerged: ["emerged", "everything"],
  cut: ["cut", "last"],
  loss: ["loss", "everything"],
  resown: ["resown"],
};

const SHARES: Readonly<Record<string, number>> = {
  half: 0.5,
  third: 0.333,
  quarter: 0.25,
  "1/2": 0.5,
  "1/3": 0.333,
  "1/4": 0.25,
  "2/3": 0.667,
  "3/4": 0.75,
  "two thirds": 0.667,
  "three quarters": 0.75,
};

/** The share said to be lost; null when none is. */
function shareOf({ left, roles }: Parts): number | null {
  const text = left.map((token) => token.text).join(" ");
  if (roles.includes("everything")) return text === "" ? 1 : null;
  const percent = /^(\d+(?:\.\d+)?) (?:%|percent)$/u.exec(text)?.[1];
  const share =
    percent === undefined ? (Object.hasOwn(SHARES, text) ? SHARES[text]! : null) : Number(percent) / 100;
  return share !== null && share > 0 && share <= 1 ? share : null;
}

/** What a note about a succession says beyond its kind. */
function ofSuccession(parts: Parts, kind: Exclude<Kind, "cover">, { farm }: NoteSetting) {
  const { left, roles, said } = parts;
  if (kind === "leaf") {
    const read = amountsOf(left, "leaf", farm.units);
    if ("unknown" in read) return notKnown(read.unknown);
    if ("unclear" in read) return misread(read.unclear);
    if (read.values.length === 0) return misread("Say what was seen or done.");
    if (read.values.some((length) => length <= 0 || length > LONGEST))
      return misread("Note the longest leaf of each of some five plants.", {
        code: "leaf-out-of-range",
        expected: "leaf lengths between 0 and 60 cm (24 in)",
      });
    return { kind, lengths: read.values };
  }
  if (kind === "cut") {
    if (said.last) return misread('Write "last cut" for the last one, and the day by itself.');
    const read = amountsOf(left, "mass", farm.units);
    if ("unknown" in read) return notKnown(read.unknown);
    if ("unclear" in read) return misread(read.unclear);
    const weight =
      read.values.length === 0 ? null : kilogram(read.values.reduce<number>((sum, value) => sum + value, 0));
    return { kind, weight, last: roles.includes("last") };
  }
  if (kind === "loss") {
    const share = shareOf(parts);
    return share === null ? misread('Say which share, like "20 %" or "a third".') : { kind, share };
  }
  return left.length > 0 ? notKnown(left.map(({ text }) => text)) : { kind };
}

export function successionNotes(
  parts: Parts,
  kind: Exclude<Kind, "cover">,
  moment: NoteMoment,
  setting: NoteSetting,
): readonly Note[] | Misreading {
  const { farm } = setting;
  const strange = parts.roles.filter((role) => !MAY_SAY[kind].includes(role));
  if (strange.length > 0) return misread(`Leave "${strange[0]!}" out, or write it on a line of its own.`);
  const { successions: ids, tunnels, crops } = parts.names;
  if (ids.length === 0) {
    const near = farm.successions.filter(
      ({ tunnel, crop }) => tunnels.includes(tunnel) || crops.includes(crop),
    );
    const which = near.map(({ id }) => id).join(" or ");
    const unknown =
      tunnels.length + crops.length === 0 ? parts.left.filter(({ kind: what }) => what === "word") : [];
    return misread(which === "" ? "Say which succession, by its id." : `Say which succession: ${which}.`, {
      unknown: unknown.map(({ text }) => text),
    });
  }
  const said = ofSuccession(parts, kind, setting);
  if (said.kind === "misread") return said;
  if (ids.length > 1 && (kind === "leaf" || kind === "loss" || (said.kind === "cut" && said.weight !== null)))
    return misread("Write a line for each succession, since a measure belongs to one.");
  const notes: Note[] = [];
  for (const id of ids) {
    const about = farm.successions.find((one) => one.id === id)!;
    if (tunnels.some((tunnel) => tunnel !== about.tunnel) || crops.some((crop) => crop !== about.crop))
      return misread(
        `${id} is ${farm.crops.get(about.crop)?.name ?? about.crop} on ${about.tunnel}; correct one of the two.`,
      );
    const date = localDate(farm.place.zone, moment.at);
    if (date < about.sown)
      return misread("Correct the date here or in successions.csv.", {
        code: "note-before-sowing",
        expected: `a date from ${about.sown} on, when ${id} was sown`,
        received: date,
      });
    notes.push({ at: moment.at, line: 0, remark: "", succession: id, ...said } as Note);
  }
  return notes;
}
