import { STYLE } from "./style.ts";
import { type Html, html, type Value } from "./tag.ts";

/** A page that needs nothing else and lets nothing run. @param more - Style of its own, behind the common one. */
export const shell = (title: string, kind: string, more: Html | null, body: Value): string =>
  html`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<title>${title}</title>
${STYLE}${more}
</head>
<body class="${kind}">
${body}
</body>
</html>
`.toString();
