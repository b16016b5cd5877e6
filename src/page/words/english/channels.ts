/** What is wrong with the widths of channels. */

export const channelsWords = {
  commaInNumber: ({
    found,
    point,
    several,
  }: {
    readonly found: string;
    readonly point: string;
    readonly several: string;
  }) =>
    `“${found}” has a comma in a number. Write a decimal point, such as ${point}; several widths have a comma and a space between them, such as ${several}.`,
  empty: ({ several }: { readonly several: string }) =>
    `The width of a channel is empty. Type one, or several such as ${several}, or switch the channels off.`,
  twoNumbers: ({ found, several }: { readonly found: string; readonly several: string }) =>
    `“${found}” is not one width. Several are written with a comma and a space between them, such as ${several}.`,
  name: 'width of a channel',
};
