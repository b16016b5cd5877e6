/**
 * The page as one file, which opens from a disk, a memory stick or an e-mail. What the page loads later stands in it as
 * text that nothing runs; the page makes scripts of it when it is wanted. Its policy names each script and style sheet
 * by its hash (Content Security Policy Level 3, section 6.7.2.3), and lets nothing else run.
 */

import { createHash } from 'node:crypto';

/** `read` gives the text of a file of the page; `style` is of all style sheets. Returns the file's text. */
export const oneFile = (read, style, { first, later }) => {
  const scripts = [...first, ...later].map((name) => [name, withoutTags(read(name))]);
  const hashes = (texts) => texts.map((text) => `'sha256-${sha256(text)}'`).join(' ');
  const policy = [
    "default-src 'none'",
    `script-src ${hashes(scripts.map(([, text]) => text))}`,
    `style-src ${hashes([style])}`,
    'img-src data: blob:',
    'worker-src blob:',
    'frame-src blob:',
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ');
  const icon = `data:image/svg+xml;base64,${Buffer.from(read('icon.svg')).toString('base64')}`;
  const lines = read('index.html').split('\n');
  const head = lines.flatMap((line) => {
    if (line.includes('Content-Security-Policy'))
      return line.replace(/content="[^"]*"/, `content="${policy}"`);
    if (line.includes('href="icon.svg"')) return line.replace('icon.svg', icon);
    if (line.includes('href="page.css"')) return `    <style>${style}</style>`;
    return /rel="manifest"|<script/.test(line) ? [] : line;
  });
  const held = scripts
    .filter(([name]) => later.includes(name))
    .map(([name, text]) => `    <script type="text/plain" data-file="${name}">${text}</script>`);
  const run = scripts
    .filter(([name]) => first.includes(name))
    .map(([, text]) => `    <script>${text}</script>`);
  const end = head.indexOf('  </body>');
  if (end < 0) throw new Error('index.html has no end of its body');
  return [...head.slice(0, end), OPENED, ...held, ...run, ...head.slice(end)].join('\n');
};

/** Where a plan may stand that the page opens with. */
const OPENED = '    <script type="application/json" data-file="opened.json"></script>';

/** Within a string or a pattern, where such a thing may stand, this is the same; in HTML it would end the script. */
const withoutTags = (script) => script.replace(/<(?=!--|\/?script)/gi, '\\x3C');

const sha256 = (text) => createHash('sha256').update(text).digest('base64');
