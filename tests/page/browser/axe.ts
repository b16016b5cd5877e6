/** What axe-core finds on the page as it stands, and whether anything is cut off at its right. */

import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

/** Through the debugger, which the page's own policy does not reach. */
export const violations = async (page: Page): Promise<readonly string[]> => {
  await page.evaluate(axeSource);
  const results = await page.evaluate(
    (tags) =>
      (
        window as unknown as { axe: { run: (root: Document, options: object) => Promise<AxeResults> } }
      ).axe.run(document, { runOnly: { type: 'tag', values: tags } }),
    TAGS,
  );
  expect(results.passes.length).toBeGreaterThan(20);
  return results.violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.html.slice(0, 120)).join(' | ')}`);
};

/** px that the page is wider than the window. */
export const overflow = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
