/** What can be done with a template of hers, and with a picture that is none yet. */

export const ownWords = {
  setPoints: 'Set its points right',
  setPointsOf: ({ title }: { readonly title: string }) => `Set its points right: ${title}`,
  setPicture: 'Set it right over its picture',
  setPictureOf: ({ title }: { readonly title: string }) => `Set it right over its picture: ${title}`,
  more: ({ title }: { readonly title: string }) => `Rename, save or remove ${title}`,
  duplicate: 'Duplicate',
  remove: 'Remove',
  removed: ({ title }: { readonly title: string }) =>
    `The template “${title}” is off the shelf. Undo brings it back.`,
  copy: ({ title }: { readonly title: string }) => `${title}, copy`,
  noTitle: 'Template',
  noPicture: 'This browser does not have the picture any longer.',

  goOn: ({ name }: { readonly name: string }) => `Go on with ${name}`,
  throwAway: 'Throw it away',
  throwAwayOf: ({ name }: { readonly name: string }) => `Throw it away: ${name}`,
  takeBack: ({ name }: { readonly name: string }) => `Take ${name} back`,
};
