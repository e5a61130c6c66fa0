/** Letters alone: without white space, case and ligatures, and without what the browser's one family of fonts lacks. */
export const letters = (text: string): string =>
  text
    .normalize("NFKC")
    .toLowerCase()
    .replace(/\s|\0|[\p{Script=Arabic}\p{Script=Hebrew}]/gu, "");
