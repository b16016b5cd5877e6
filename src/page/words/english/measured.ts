/** What she measured on her last print. */

export const measuredWords = {
  before: ({ across, up }: { readonly across: string; readonly up: string }) =>
    `${across || 'nothing'} across and ${up || 'nothing'} up`,
};
