/** Drawings as SVG: lines by kind, styled by the page's own style sheet, so that light and dark each have their inks. */

import type { ComponentChildren } from 'preact';
import type { Cloth, FillsAnswer, Ink, Lettering, Picture } from '../engine/messages.ts';

export const viewBoxOf = ({ minX, minY, maxX, maxY }: Picture['box']): string =>
  [minX, minY, maxX - minX, maxY - minY].map((v) => v.toFixed(2)).join(' ');

export const Inks = ({ inks }: { readonly inks: readonly Ink[] }) => (
  <>
    {inks.map(({ name, d }) => (
      <path key={name} class={`ink ${name}`} d={d} />
    ))}
  </>
);

export const Letterings = ({
  texts,
  larger = 1,
}: {
  readonly texts: readonly Lettering[];
  /** By how much the letters are larger than in the drawing; they grow downward, away from what they name. */
  readonly larger?: number;
}) => (
  <>
    {texts.map((t) => (
      <text
        key={`${t.text} ${t.x} ${t.y}`}
        class={`lettering ${t.layer}`}
        x={t.x}
        y={t.y + (larger - 1) * t.size * CAPITALS}
        font-size={larger * t.size}
        text-anchor={t.anchor}
        font-weight={t.bold ? 'bold' : 'normal'}
        transform={t.turn === 0 ? undefined : `rotate(${t.turn} ${t.x} ${t.y})`}
      >
        {t.text}
      </text>
    ))}
  </>
);

/** All that the picture takes lies on her fabric. */
export const Ground = ({ box }: { readonly box: Picture['box'] }) => (
  <rect class="fabric" x={box.minX} y={box.minY} width={box.maxX - box.minX} height={box.maxY - box.minY} />
);

export const Areas = ({ cloth }: { readonly cloth: Cloth }) => (
  <>
    {cloth.areas.map(({ name, d }) => (
      <path key={name} class={name} d={d} />
    ))}
  </>
);

/** Fills at every place that they go to. */
export const Copied = ({ fills }: { readonly fills: FillsAnswer['quilt'] }) => (
  <>
    {fills.map((copies, i) =>
      copies.places.map((place) => (
        <path
          key={`${i} ${place.join(' ')}`}
          class="ink fill"
          d={copies.d}
          transform={`matrix(${place.join(' ')})`}
        />
      )),
    )}
  </>
);

/** The height of capital letters as a share of a font's size; most fonts are near it. */
const CAPITALS = 0.7;

interface Props {
  readonly picture: Picture;
  /** For those who cannot see it; a picture whose words stand beside it has none. */
  readonly label?: string;
  readonly class?: string;
  readonly children?: ComponentChildren;
}

export const Drawn = ({ picture, label, class: name, children }: Props) => (
  <svg
    class={`drawn ${name ?? ''}`}
    viewBox={viewBoxOf(picture.box)}
    role={label === undefined ? undefined : 'img'}
    aria-label={label}
    aria-hidden={label === undefined ? 'true' : undefined}
  >
    {children}
    <Inks inks={picture.inks} />
    <Letterings texts={picture.texts} />
  </svg>
);
