import type { CommandSpec } from "../spec.ts";
import { beds } from "./beds.options.ts";
import { check } from "./check.options.ts";
import { importing } from "./import.options.ts";
import { note } from "./note.options.ts";
import { score } from "./score.options.ts";
import { start } from "./start.options.ts";
import { week } from "./week.options.ts";

/** Every command, in the order people need them. */
export const COMMANDS: readonly CommandSpec[] = [start, check, importing, note, beds, week, score];
