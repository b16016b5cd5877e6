/**
 * Asks the browser to print a PDF, without saving it: in a frame that nobody sees, whose viewer opens the print dialog.
 * From a page on a disk browsers let nobody reach into such a frame, and on telephones there is no viewer to print from:
 * there the pages are shown by themselves, in a window whose own menu prints.
 */

import { paperWords } from '../words/words.ts';

export type Printing = 'dialog' | 'window' | 'neither';

/** iPhones and iPads print the first page alone of what stands in a frame; an iPad says that it is a Mac, but has a touch screen. */
const hasFullViewer = (): boolean =>
  navigator.pdfViewerEnabled !== false &&
  location.protocol !== 'file:' &&
  !(/Mac|iP(hone|ad)/.test(navigator.userAgent) && navigator.maxTouchPoints > 1);

/**
 * To be called where she presses, before any work: a window can be opened only then. What it gives is called with the
 * pages, or with nothing where there are none.
 */
export const startPrinting = (): ((bytes: Uint8Array | undefined) => Promise<Printing>) => {
  const shown = hasFullViewer() ? undefined : open('', '_blank');
  return async (bytes) => {
    if (!bytes) {
      shown?.close();
      return 'neither';
    }
    const address = URL.createObjectURL(new Blob([bytes as BlobPart], { type: 'application/pdf' }));
    if (hasFullViewer() && (await framed(address))) return 'dialog';
    if (!shown) return 'neither';
    shown.location.href = address;
    return 'window';
  };
};

/** Whether its print dialog was asked for. */
const framed = (address: string): Promise<boolean> => {
  document.querySelector('iframe.printed')?.remove();
  const frame = document.createElement('iframe');
  frame.className = 'printed';
  frame.title = paperWords.frame;
  frame.tabIndex = -1;
  frame.ariaHidden = 'true';
  return new Promise((settle) => {
    frame.onload = () => {
      // The viewer takes a moment after the file has come.
      setTimeout(() => {
        try {
          frame.contentWindow!.focus();
          frame.contentWindow!.print();
          settle(true);
        } catch {
          frame.remove();
          settle(false);
        }
      }, VIEWER);
    };
    frame.src = address;
    document.body.append(frame);
  });
};

/** ms */
const VIEWER = 300;
