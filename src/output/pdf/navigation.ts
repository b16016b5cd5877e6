/** What a viewer shows beside the pages: layers, labels and bookmarks. pdf-lib has no calls for them. */

import { type PDFDocument, PDFHexString, PDFName, type PDFRef } from 'pdf-lib';
import type { LayerId } from '../../drawing/index.ts';

/**
 * The drawing's layers as optional-content groups (ISO 32000-1, 8.11), named by their ids. All are on from the
 * start: some viewers cannot switch them, so nothing that matters may hang on one.
 */
export const layerGroups = (doc: PDFDocument, ids: readonly LayerId[]): Map<LayerId, PDFRef> => {
  const { context } = doc;
  const groups = new Map<LayerId, PDFRef>();
  for (const id of ids)
    groups.set(id, context.register(context.obj({ Type: 'OCG', Name: PDFHexString.fromText(id) })));
  if (groups.size > 0) {
    const refs = [...groups.values()];
    doc.catalog.set(
      PDFName.of('OCProperties'),
      context.obj({
        OCGs: refs,
        D: { Name: PDFHexString.fromText('Layers'), BaseState: 'ON', ON: refs, OFF: [], Order: refs },
      }),
    );
  }
  return groups;
};

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
