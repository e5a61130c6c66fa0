import type { TestProject } from "vitest/node";
import { noBrowser, removeChromium, unpackChromium } from "./chromium.ts";

declare module "vitest" {
  interface ProvidedContext {
    /** Folder of the unpacked browser; null where none can be had. */
    chromiumFolder: string | null;
  }
}

/** Unpacks the browser once for all tests that need it; runs only when one of them does. */
export default function setup(project: TestProject): () => void {
  const folder = noBrowser === null ? unpackChromium() : null;
  project.provide("chromiumFolder", folder);
  return () => {
    if (folder !== null) removeChromium(folder);
  };
}
