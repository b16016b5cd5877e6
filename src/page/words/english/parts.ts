/** The parts of a quilt. */

export const partsWords = {
  title: 'Parts of the quilt',
  more: 'More than one design on this quilt?',
  lead: 'This quilt has parts. The one that you choose is open:',
  takeOut: ({ name }: { readonly name: string }) => `Take “${name}” out`,
  lies: 'Where it lies',
  ownPlace: 'At a place of its own',
  inCornersOf: ({ name }: { readonly name: string }) => `In the corners of “${name}”`,
  inPlaces: ({ count }: { readonly count: number }) =>
    `It lies in ${count} places: the plan’s file says where, and how far it is turned.`,
  right: 'Right of the middle',
  rightHint: 'Of the quilt; less than 0 is left',
  up: 'Up from the middle',
  upHint: 'Less than 0 is down',
  turned: 'Turned, degrees',
  turnedHint: 'Against the clock',
  turnedWrong: 'Type degrees from -360 to 360, such as 90.',
  newName: 'Name of a new part',
  add: 'Add a part',
  nameWrong: 'A name has a letter or a digit, and no commas.',
  nameTaken: 'Another part is called so.',
  firstPart: 'first part',
  freeName: ({ number }: { readonly number: number }) => `part ${number}`,
};
