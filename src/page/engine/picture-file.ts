/** The quilt as one picture in a file: the same jobs as the command's, with the browser's canvas. */

import { NOT_TO_SHOW } from '../../jobs/coloured.ts';
import { calledAfter, proposedName } from '../../jobs/names.ts';
import { type PictureWanted, picture } from '../../jobs/picture.ts';
import { quiltPicture } from '../../jobs/quilt-picture.ts';
import { usualShow } from '../../output/mockup/index.ts';
import { WRITERS } from '../../output/writers/index.ts';
import { painting } from './canvas.ts';
import { chosenFit, fitsOfQuilt } from './desk.ts';
import type { PictureAsked, PictureLook, Printed } from './messages.ts';
import { meansWith } from './print.ts';

/** Sharp on any screen, and still small enough to send (pixels). */
const WIDTH = 2400;

export const pictureFile = async ({
  input,
  ending,
  ofQuilt,
  look,
  fonts,
}: PictureAsked): Promise<Printed> => {
  const writer = WRITERS.find((each) => each.ending === ending)!;
  const wanted: PictureWanted = {
    writer,
    ...wantedFor(look),
    ...(writer.takes.includes('pixels') && { pixels: { widthInPixels: WIDTH } }),
  };
  const means = fonts ? { ...meansWith(fonts), canvas: painting(fonts) } : WITHOUT_FONTS;
  const kind = look.kind;
  if (ofQuilt) {
    const { title, parts } = fitsOfQuilt(input);
    return file(
      { called: calledAfter(title), kind, ending },
      await quiltPicture(title, parts, wanted, means),
    );
  }
  const fit = chosenFit(input);
  const show = wanted.show === '' ? usualShow(fit.design) : wanted.show;
  const naming = { called: calledAfter(fit.title), part: fit.name, kind, ending };
  return file(naming, await picture(fit, { ...wanted, show }, means));
};

const wantedFor = (look: PictureLook): Omit<PictureWanted, 'writer'> => {
  switch (look.kind) {
    case 'colours':
      return { inColours: true, without: look.withMarks ? ['template'] : NOT_TO_SHOW };
    case 'projector':
      return {
        show: look.show,
        transfer: { kind: 'projector', isMeasured: true },
        without: ['template', 'way', ...(look.withFills ? [] : (['fill'] as const))],
      };
    default:
      return look satisfies never;
  }
};

/** A drawing has no letters of ours, and nothing in it is deflated. */
const WITHOUT_FONTS = {
  deflate: (bytes: Uint8Array) => bytes,
  fonts: () => Promise.reject(new Error('A drawing asked for fonts')),
};

const file = (
  naming: Parameters<typeof proposedName>[0],
  {
    bytes,
    words,
    notices = [],
  }: Awaited<ReturnType<typeof picture>> | Awaited<ReturnType<typeof quiltPicture>>,
): Printed => ({
  name: proposedName(naming),
  bytes: typeof bytes === 'string' ? new TextEncoder().encode(bytes) : bytes,
  words,
  notices,
});
