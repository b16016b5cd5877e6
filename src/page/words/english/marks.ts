/** The marking card on the screen. */

export const marksWords = {
  title: 'Marks and settings',
  lead: 'What the marking card says, for this design.',
  before: 'These are still the marks of the figures before.',
  workingOut: 'Working out the marks for the new figures …',
  table: 'Table',
  which: 'which',
};
