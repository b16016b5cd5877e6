/** A template from points that are measured off a cutting mat. */

export const pointsWords = {
  title: 'Your template, point by point',
  lead: 'Lay the acrylic on a cutting mat and read points off its edge, from the heel to the crown end with the foot on the left: one every inch, and more where it bends.',
  putAway: 'Put the points away',
  usualTitle: 'My template',
  /** Stands in the template's file. */
  remark: 'Measured point by point.',
  points: 'Points: across, up; with the word corner where the edge has one',
  example: '0, 0\n1, 3/4\n2, 1, corner\n3 1/4, 1/2',
  onePerLine: 'One a line. A column of a table can be pasted too.',
  notAPoint: ({ line, text }: { readonly line: number; readonly text: string }) =>
    `Line ${line} is no point: “${text}”. Write two lengths with a comma between them, such as 3 1/4, 1/2.`,
  point: ({ number }: { readonly number: number }) => `Point ${number}`,
  tooMany: ({ most }: { readonly most: number }) => `These are more than ${most} points.`,
  drawnHere: 'The curve is drawn here as the points come.',
  curve: 'The curve through the points',
  acrossAndUp: ({ across, up }: { readonly across: string; readonly up: string }) =>
    `${across} across, ${up} up`,
};
