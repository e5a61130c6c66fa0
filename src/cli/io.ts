import type { Web } from "./web.ts";

/** One of the two streams a command writes to, with what decides how it may look. */
export interface Sink {
  readonly terminal: boolean;
  /** Columns of the terminal; undefined when it is none. */
  readonly columns: number | undefined;
  write(text: string): void;
}

/** Everything a command touches besides files. */
export interface Io {
  readonly stdout: Sink;
  readonly stderr: Sink;
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly cwd: string;
  /** The machine's time zone. */
  readonly zone: string;
  /** Milliseconds since 1970. */
  now(): number;
  /** All of standard input. */
  input(): Promise<Buffer>;
  /** How weather services are reached, where that is not as they stand. */
  readonly web?: Web;
}

const sink = (stream: NodeJS.WriteStream): Sink => ({
  terminal: stream.isTTY === true,
  columns: stream.columns,
  write: (text) => void stream.write(text),
});

async function allOf(stream: NodeJS.ReadStream): Promise<Buffer> {
  const chunks: Buffer[] = [];
  for await (const chunk of stream) chunks.push(chunk as Buffer);
  return Buffer.concat(chunks);
}

/** The process's own streams. */
export const processIo = (): Io => ({
  stdout: sink(process.stdout),
  stderr: sink(process.stderr),
  env: process.env,
  cwd: process.cwd(),
  zone: Intl.DateTimeFormat().resolvedOptions().timeZone,
  now: () => Date.now(),
  input: () => allOf(process.stdin),
});
