/** Small copies of drawings side by side on paper, to choose from by eye, and to draw over. */

export { captionOf } from './caption.ts';
export { excerptOf } from './excerpt.ts';
export { writeGallery } from './gallery.ts';
export { MOST_ON_PAGE } from './grid.ts';
export {
  type LayingOptions,
  PAGE_TOO_SMALL,
  type PagesFor,
  type Picture,
  type PictureItem,
  type PictureOptions,
  type PictureSection,
  pagesFor,
  scaleWords,
  type WrittenPictures,
  writePictures,
} from './pictures.ts';
export { smallLines, smallSheet } from './small-look.ts';
export { writeContactSheet } from './write-contact-sheet.ts';
