/** A class from a table that is pasted. */

export const classWords = {
  title: 'A class',
  putAway: 'Put the table away',
  leadOwn: 'Each piece gets what fits it best. Take one of what fits, and all are set alike.',
  leadTaken: 'All are set like the one that you took. How many swags there are is each piece’s own.',
  table: 'The table of students: name, length and width of each piece',
  example: 'name,length,width\nAda,36,5\nBerit,30 1/2,',
  hint: 'Paste it from a spreadsheet. Its first line names its columns: name,length,width. A piece without a width is as wide as the plan’s strip.',
  someCannot: 'These cannot be made; the others are.',
  noneCan: 'The class cannot be made.',
  counted: ({ counted }: { readonly counted: string }) => `${counted}.`,
  print: 'Sheets for the class',
  printThem: 'Print them for the class',
};
