/** Node's module loader needs the file's ending, which paper's own types leave out. */
declare module 'paper/dist/paper-core.js' {
  import paper from 'paper/dist/paper-core';
  export = paper;
}
