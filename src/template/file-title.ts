/** What a template is called that was made from a file: `my_corbel-2.svg` is “My corbel 2”. */
export const titleOfFile = (name: string): string => {
  const base = name
    .split(/[\\/]/)
    .at(-1)!
    .replace(/\.[a-z0-9]+$/i, '');
  const words = base.replace(/[_-]+/g, ' ').trim();
  return words === '' ? 'Template' : words.charAt(0).toUpperCase() + words.slice(1);
};
