/** What breaks are, in words: beside a field of the page, and in a line at a terminal. */
export const BREAK_KINDS = { notch: 'a notch', corner: 'a corner', mark: 'on a smooth stretch' } as const;
