import { readFile } from "node:fs/promises";
import { join } from "node:path";

/** When a service's page was made and how long it holds: so that it is not asked for what is known. Losing it loses nothing. */
const MEMORY = ".leafpace.fetched.json";

const FORMAT = "leafpace fetched";
const REMARK =
  "Until when the forecasts fetched last hold, so that the services are not asked for them again. It may be deleted.";

export interface FetchedBefore {
  readonly address: string;
  /** Name of the kept forecast. */
  readonly kept: string;
  readonly lastModified: string | null;
  /** [ms since 1970] */
  readonly expires: number | null;
}

const isText = (value: unknown): value is string => typeof value === "string";

function isFetched(value: unknown): value is FetchedBefore {
  const { address, kept, lastModified, expires } = (value ?? {}) as Partial<FetchedBefore>;
  return (
    isText(address) &&
    isText(kept) &&
    (lastModified === null || (isText(lastModified) && /^[\x20-\x7e]{1,60}$/u.test(lastModified))) &&
    (expires === null || typeof expires === "number")
  );
}

/** What is remembered; nothing when the file is not there or not as it was written. */
export async function fetchedBefore(dir: string): Promise<readonly FetchedBefore[]> {
  try {
    const { format, fetched } = JSON.parse(await readFile(join(dir, MEMORY), "utf8"));
    return format === FORMAT && Array.isArray(fetched) ? fetched.filter(isFetched) : [];
  } catch (error) {
    if (error instanceof SyntaxError || error instanceof TypeError) return [];
    if ((error as NodeJS.ErrnoException).code === "ENOENT") return [];
    throw error;
  }
}

export async function rememberFetched(dir: string, last: FetchedBefore): Promise<void> {
  const others = (await fetchedBefore(dir)).filter(({ address }) => address !== last.address);
  const { default: writeFileAtomic } = await import("write-file-atomic");
  const text = JSON.stringify(
    { format: FORMAT, version: 1, remark: REMARK, fetched: [...others, last] },
    null,
    2,
  );
  await writeFileAtomic(join(dir, MEMORY), `${text}\n`);
}
