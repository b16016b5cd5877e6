/** What fields say wherever they stand. */

export const fieldsWords = {
  exactly: ({ length }: { readonly length: string }) => `Exactly ${length}`,
  wholeNumber: 'Write a whole number, such as 8.',
  asFits: 'as fits best',
  moreTroubles: ({ count }: { readonly count: number }) => `and ${count} more`,
};
