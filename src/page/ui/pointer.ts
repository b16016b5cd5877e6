/** Where hands are. */

export interface Place {
  readonly x: number;
  readonly y: number;
}

/** Where a pointer is in the picture that it is over, in the picture's own units. */
export const placeIn = (event: MouseEvent): Place => {
  const target = event.currentTarget as SVGElement;
  const matrix = (target.ownerSVGElement ?? (target as SVGSVGElement)).getScreenCTM()?.inverse();
  if (!matrix) return { x: 0, y: 0 };
  const at = new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix);
  return { x: at.x, y: at.y };
};
