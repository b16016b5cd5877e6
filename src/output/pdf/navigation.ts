/** What a viewer shows beside the pages: their labels and bookmarks. pdf-lib has no calls for them. */

import { type PDFDocument, PDFHexString, PDFName, type PDFRef } from 'pdf-lib';

/** Each page is called by its sheet's label instead of its number (ISO 32000-1, 12.4.2). */
export const addPageLabels = (doc: PDFDocument, labels: readonly string[]): void => {
  const Nums = labels.flatMap((label, index) => [index, { P: PDFHexString.fromText(label) }]);
  doc.catalog.set(PDFName.of('PageLabels'), doc.context.obj({ Nums }));
};

/** One bookmark a page, in order (ISO 32000-1, 12.3.3). */
export const addBookmarks = (doc: PDFDocument, titles: readonly string[], pages: readonly PDFRef[]): void => {
  if (titles.length === 0) return;
  const { context } = doc;
  const root = context.nextRef();
  const refs = titles.map(() => context.nextRef());
  for (const [index, title] of titles.entries()) {
    const entry = context.obj({
      Title: PDFHexString.fromText(title),
      Parent: root,
      Dest: [pages[index]!, 'Fit'],
    });
    const before = refs[index - 1];
    const after = refs[index + 1];
    if (before) entry.set(PDFName.of('Prev'), before);
    if (after) entry.set(PDFName.of('Next'), after);
    context.assign(refs[index]!, entry);
  }
  context.assign(
    root,
    context.obj({ Type: 'Outlines', First: refs[0]!, Last: refs.at(-1)!, Count: refs.length }),
  );
  doc.catalog.set(PDFName.of('Outlines'), root);
};
