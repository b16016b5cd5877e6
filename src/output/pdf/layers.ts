/**
 * The drawing's layers as optional-content groups (ISO 32000-1, 8.11), named by their ids. All are on from the
 * start: some viewers cannot switch them, so nothing that matters may hang on one.
 */

import { type PDFDocument, PDFHexString, PDFName, type PDFRef } from 'pdf-lib';
import type { LayerId } from '../../drawing/index.ts';

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
