import type { TestProject } from "vitest/node";
import { noBrowser, unpackChromium } from "./chromium.ts";

declare module "vitest" {
  interface ProvidedContext {
    /** Folder of the unpacked browser; null where none can be had. */
    chromiumFolder: string | null;
  }
}

/** Unpacks the browser once for all tests that need it; runs only when one of them does. */
export default function setup(project: TestProject): void {
  project.provide("chromiumFolder", noBrowser === null ? unpackChromium() : null);
}
