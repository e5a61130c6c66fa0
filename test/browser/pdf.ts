import { fileURLToPath } from "node:url";
import { getDocument, type PDFDocumentProxy, VerbosityLevel } from "pdfjs-dist/legacy/build/pdf.mjs";

export type Paper = "Letter" | "A4";

/** A printed page. */
export interface PdfPage {
  /** [pt] */
  readonly width: number;
  readonly height: number;
  /** Pieces of text in the order they were drawn. */
  readonly texts: readonly PdfText[];
  readonly links: readonly PdfLink[];
}

/** One rectangle of a link, from the lower left corner of the page. [pt] */
export interface PdfLink {
  readonly address: string;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
  readonly top: number;
}

export interface PdfText {
  readonly text: string;
  /** Left end of the base line, from the lower left corner of the page. [pt] */
  readonly x: number;
  readonly y: number;
  /** [pt] */
  readonly width: number;
  readonly height: number;
}

/** pdfjs takes the bytes it is given away, and fetches nothing but the fonts of its own package. */
const opened = (pdf: Uint8Array): Promise<PDFDocumentProxy> =>
  getDocument({
    data: new Uint8Array(pdf),
    verbosity: VerbosityLevel.ERRORS,
    standardFontDataUrl: fileURLToPath(
      new URL("../../node_modules/pdfjs-dist/standard_fonts/", import.meta.url),
    ),
  }).promise;

/** What stands on each page of a PDF. */
export async function pdfPages(pdf: Uint8Array): Promise<readonly PdfPage[]> {
  const document = await opened(pdf);
  const pages: PdfPage[] = [];
  for (let number = 1; number <= document.numPages; number++) {
    const page = await document.getPage(number);
    const { width, height } = page.getViewport({ scale: 1 });
    const { items } = await page.getTextContent();
    const annotations = await page.getAnnotations();
    pages.push({
      width,
      height,
      texts: items.flatMap((item) =>
        "str" in item && item.str !== ""
          ? [
              {
                text: item.str,
                x: item.transform[4] as number,
                y: item.transform[5] as number,
                width: item.width,
                height: item.height,
              },
            ]
          : [],
      ),
      links: annotations.flatMap(({ url, rect: [left, bottom, right, top] }) =>
        typeof url === "string" ? [{ address: url, left, bottom, right, top }] : [],
      ),
    });
  }
  await document.destroy();
  return pages;
}

/** What pdfjs brings for Node in place of a page's canvas. */
interface Canvases {
  create(width: number, height: number): { readonly canvas: Canvas };
}
type Canvas = HTMLCanvasElement & { toBuffer(type: "image/png"): Uint8Array };

/** Levels of grey: letters look alike, and the file is a third as large; ten keep the palest grey. */
const LEVELS = 10;

/** As a printer without colours prints it; shares of red, green and blue in brightness from ITU-R BT.601. */
function inGrey(canvas: Canvas): void {
  const context = canvas.getContext("2d")!;
  const image = context.getImageData(0, 0, canvas.width, canvas.height);
  const { data } = image;
  const step = 255 / (LEVELS - 1);
  for (let i = 0; i < data.length; i += 4) {
    const brightness = 0.299 * data[i]! + 0.587 * data[i + 1]! + 0.114 * data[i + 2]!;
    data.fill(Math.round(brightness / step) * step, i, i + 3);
  }
  context.putImageData(image, 0, 0);
}

/** Pages of a PDF as pictures in grey. `scale`: picture points per pt. */
export async function pdfPictures(pdf: Uint8Array, scale: number): Promise<readonly Uint8Array[]> {
  const document = await opened(pdf);
  const pictures: Uint8Array[] = [];
  for (let number = 1; number <= document.numPages; number++) {
    const page = await document.getPage(number);
    const viewport = page.getViewport({ scale });
    const [width, height] = [Math.ceil(viewport.width), Math.ceil(viewport.height)];
    const { canvas } = (document.canvasFactory as Canvases).create(width, height);
    await page.render({ canvas, viewport }).promise;
    inGrey(canvas);
    pictures.push(canvas.toBuffer("image/png"));
  }
  await document.destroy();
  return pictures;
}
