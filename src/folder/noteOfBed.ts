import type { Note, Succession } from "../farm/index.ts";
import { list, unlikeInNumber } from "../problem/index.ts";
import { type Instant, kilogram, localDate } from "../quantity/index.ts";
import { listed } from "./faults.ts";
import { amountsOf, sumOf } from "./noteAmount.ts";
import type { NoteMoment } from "./noteMoment.ts";
import type { Kind, Parts, Role } from "./noteParts.ts";
import { type Misreading, misread, misreadBy, type NoteSetting, notKnown, ranged } from "./noteRead.ts";
import { leavesBroken, shareBroken, sowingBroken, weightBroken } from "./noteRules.ts";

/** Words of the trade that may stand in a note of each kind. */
const MAY_SAY: Readonly<Record<Exclude<Kind, "cover">, readonly Role[]>> = {
  leaf: [],
  strip: ["strip"],
  "not ready": ["not ready"],
  emerged: ["emerged", "everything"],
  cut: ["cut", "last"],
  loss: ["loss", "everything"],
  resown: ["resown"],
};

const SHARES: ReadonlyMap<string, number> = new Map([
  ["half", 0.5],
  ["third", 0.333],
  ["quarter", 0.25],
  ["1/2", 0.5],
  ["1/3", 0.333],
  ["1/4", 0.25],
  ["2/3", 0.667],
  ["3/4", 0.75],
  ["two thirds", 0.667],
  ["three quarters", 0.75],
]);

/** The share said to be lost; null when none is. */
function shareOf({ left, roles }: Parts): number | null {
  const text = left.map((token) => token.text).join(" ");
  if (roles.includes("everything")) return text === "" ? 1 : null;
  const percent = /^(\d+(?:\.\d+)?) (?:%|percent)$/u.exec(text)?.[1];
  return percent === undefined ? (SHARES.get(text) ?? null) : Number(percent) / 100;
}

type Beyond<Of> = Of extends { readonly succession: string }
  ? Omit<Of, "at" | "line" | "remark" | "succession">
  : never;

/** What a note about a succession says beyond what every such note has. */
type OfSuccession = Beyond<Note>;

function leafSaid(kind: "leaf" | "strip", { left }: Parts, { farm }: NoteSetting): OfSuccession | Misreading {
  const read = amountsOf(left, "leaf", farm.units);
  if ("unknown" in read) return notKnown(read.unknown);
  if ("range" in read) return ranged("one length a plant");
  if ("unclear" in read) return misread(read.unclear);
  const lengths = read.amounts.map(({ value }) => value);
  if (lengths.length === 0) return misread("Say what was seen or done.");
  const broken = leavesBroken(lengths);
  return broken === null ? { kind, lengths } : misreadBy(broken);
}

function cutSaid({ left, roles, said }: Parts, { farm }: NoteSetting): OfSuccession | Misreading {
  if (said.last) return misread('Write "last cut" for the last one, and the day by itself.');
  const read = amountsOf(left, "mass", farm.units);
  if ("unknown" in read) return notKnown(read.unknown);
  if ("unclear" in read) return misread(read.unclear);
  const sum = "range" in read ? null : sumOf(read.amounts);
  if ("range" in read || sum === null) return ranged("one weight");
  const weight = read.amounts.length === 0 ? null : kilogram(sum);
  const broken = weightBroken(weight);
  return broken === null ? { kind: "cut", weight, last: roles.includes("last") } : misreadBy(broken);
}

function lossSaid(parts: Parts): OfSuccession | Misreading {
  const share = shareOf(parts);
  const broken = share === null ? null : shareBroken(share);
  if (share !== null) return broken === null ? { kind: "loss", share } : misreadBy(broken);
  const { left } = parts;
  return left.some(({ text }) => text === "-") &&
    left.every(({ kind, text }) => kind !== "word" || text === "percent")
    ? ranged("one share")
    : misread('Say which share, like "20 %" or "a third".');
}

function ofSuccession(
  parts: Parts,
  kind: Exclude<Kind, "cover">,
  setting: NoteSetting,
): OfSuccession | Misreading {
  switch (kind) {
    case "leaf":
    case "strip":
      return leafSaid(kind, parts, setting);
    case "cut":
      return cutSaid(parts, setting);
    case "loss":
      return lossSaid(parts);
    default:
      return parts.left.length > 0 ? notKnown(parts.left.map(({ text }) => text)) : { kind };
  }
}

/** Successions that go by a tunnel or a crop: of several those that stand, where only one of them does. */
export function goingBy(
  { tunnels, crops }: Parts["names"],
  { successions, notes, place }: NoteSetting["farm"],
  at: Instant,
): readonly Succession[] {
  const by = (names: readonly string[], name: string): boolean => names.length === 0 || names.includes(name);
  if (tunnels.length + crops.length === 0) return [];
  const fitting = successions.filter(({ tunnel, crop }) => by(tunnels, tunnel) && by(crops, crop));
  const standing = fitting.filter(
    ({ id, sown }) =>
      sown <= localDate(place.zone, at) &&
      !notes.some((note) => note.kind === "cut" && note.last && note.succession === id && note.at <= at),
  );
  return standing.length === 1 ? standing : fitting;
}

/** Why it is not known which succession a line is about. */
export function whichOne(
  parts: Pick<Parts, "names" | "left">,
  fitting: readonly Succession[],
  { farm }: Pick<NoteSetting, "farm">,
): Misreading {
  const { tunnels, crops } = parts.names;
  const ids = farm.successions.map(({ id }) => id);
  const unknown =
    tunnels.length + crops.length === 0
      ? parts.left.filter(({ kind }) => kind === "word").map(({ text }) => text)
      : [];
  const other = unknown.find((word) => unlikeInNumber(word, ids).length > 0);
  if (other !== undefined)
    return misread(`${other.toUpperCase()} is none of the successions known here: ${listed(ids)}.`, {
      unknown,
    });
  const near =
    fitting.length > 0
      ? fitting
      : farm.successions.filter(({ tunnel, crop }) => tunnels.includes(tunnel) || crops.includes(crop));
  const which = list(
    near.map(({ id }) => id),
    "or",
  );
  return misread(which === "" ? "Say which succession, by its id." : `Say which succession: ${which}.`, {
    unknown,
  });
}

/** Words about a bed or a tunnel that are no more than a remark; null where something was seen or done. */
function remarkAlone({ left, roles, names }: Parts, about: Succession | undefined, { farm }: NoteSetting) {
  const words = left.filter(({ kind }) => kind === "word").map(({ text }) => text);
  if (about === undefined || words.length === 0 || words.length < left.length || roles.length > 0)
    return null;
  const remark = names.rest.replace(/[\s,]+/gu, " ").trim();
  const leaf = farm.units === "US" ? "4 in" : "10 cm";
  return misread(`A remark goes behind something seen or done, like "${about.id} ${leaf} - ${remark}".`, {
    unknown: words,
  });
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
  const { successions: named, tunnels, crops } = parts.names;
  const fitting = named.length === 0 ? goingBy(parts.names, farm, moment.at) : [];
  const first = farm.successions.find(({ id }) => id === (named[0] ?? fitting[0]?.id));
  const remark = kind === "leaf" ? remarkAlone(parts, first, setting) : null;
  if (remark !== null) return remark;
  if (named.length === 0 && fitting.length !== 1) return whichOne(parts, fitting, setting);
  const ids = named.length > 0 ? named : fitting.map(({ id }) => id);
  const said = ofSuccession(parts, kind, setting);
  if (said.kind === "misread") return said;
  const measures = kind === "leaf" || kind === "strip" || kind === "loss";
  if (ids.length > 1 && (measures || (said.kind === "cut" && said.weight !== null)))
    return misread("Write a line for each succession, since a measure belongs to one.");
  const notes: Note[] = [];
  for (const id of ids) {
    const about = farm.successions.find((one) => one.id === id)!;
    if (tunnels.some((tunnel) => tunnel !== about.tunnel) || crops.some((crop) => crop !== about.crop))
      return misread(
        `${id} is ${farm.crops.get(about.crop)?.name ?? about.crop} on ${about.tunnel}; correct one of the two.`,
      );
    const broken = sowingBroken(about, localDate(farm.place.zone, moment.at));
    if (broken !== null) return misreadBy(broken);
    notes.push({ at: moment.at, line: 0, remark: "", succession: id, ...said });
  }
  return notes;
}
