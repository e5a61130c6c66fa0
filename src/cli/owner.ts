import { createHash, randomBytes } from "node:crypto";
import { readFile, readlink } from "node:fs/promises";
import { hostname } from "node:os";

/** Who holds a lock, as its name tells. */
export interface Owner {
  readonly pid: number;
  /** When it began, by which it is told from a later process of the same number; "0" where the system does not say. */
  readonly began: string;
  /** Machine, start of the machine and space of process numbers, as one short word. */
  readonly place: string;
}

/** Does a process still run? "unknown": it is of another machine, or the system does not tell. */
export type Fate = "runs" | "gone" | "unknown";

const readOr = (reading: Promise<string>): Promise<string> => reading.catch(() => "");

async function placeHere(): Promise<string> {
  const parts = await Promise.all([
    hostname(),
    readOr(readFile("/proc/sys/kernel/random/boot_id", "utf8")),
    readOr(readlink("/proc/self/ns/pid")),
  ]);
  return createHash("sha256").update(parts.join("\n")).digest("hex").slice(0, 12);
}

/** Linux: state and start of a process [ticks], behind its name in brackets. proc(5) */
async function processAt(pid: number): Promise<{ readonly state: string; readonly began: string } | null> {
  const text = await readOr(readFile(`/proc/${pid}/stat`, "utf8"));
  const fields = text.slice(text.lastIndexOf(")") + 2).split(" ");
  return text === "" || fields.length < 20 ? null : { state: fields[0]!, began: fields[19]! };
}

/** A name for a lock of this process, of which no two are alike. */
export async function ownName(): Promise<string> {
  const [here, self] = await Promise.all([placeHere(), processAt(process.pid)]);
  return [process.pid, self?.began ?? "0", here, randomBytes(4).toString("hex")].join("-");
}

/** Whose name it is; null for a name nobody here gave. */
export function ownerOf(name: string): Owner | null {
  const match = /^(\d{1,10})-(\d{1,20})-([0-9a-f]{12})-[0-9a-f]{8}$/u.exec(name);
  return match === null ? null : { pid: Number(match[1]), began: match[2]!, place: match[3]! };
}

/** Whether a process can be sent signals, or could be if it were ours. */
function reachable(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code !== "ESRCH";
  }
}

/** A process that is stopped or busy runs; one that has ended and was not yet taken note of does not. */
export async function fateOf({ pid, began, place }: Owner): Promise<Fate> {
  if (place !== (await placeHere())) return "unknown";
  if (!reachable(pid)) return "gone";
  if (began === "0") return "unknown";
  const now = await processAt(pid);
  return now !== null && now.began === began && now.state !== "Z" && now.state !== "X" ? "runs" : "gone";
}
