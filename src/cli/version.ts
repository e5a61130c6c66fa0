declare const LEAFPACE_VERSION: string | undefined;

/** Version of the package, put in when it is bundled. */
export const version: string = typeof LEAFPACE_VERSION === "string" ? LEAFPACE_VERSION : "from source";
