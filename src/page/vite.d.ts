/** What the bundler puts in while it builds. */

interface ImportMeta {
  glob<T>(
    pattern: string,
    options: { readonly query: '?raw'; readonly import: 'default'; readonly eager: true },
  ): Record<string, T>;
}

declare module '*.css' {}
