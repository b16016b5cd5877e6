/** The page as a whole: what it is about, the steps in their order, and what is said while they are taken. */

import { footWords, headWords } from '../words/words.ts';
import { Fits, Templates } from './choose.tsx';
import { Colours } from './colours.tsx';
import { Note } from './explained.tsx';
import { Figures } from './figures.tsx';
import { takeFiles } from './files.tsx';
import { Head } from './head.tsx';
import { Intro } from './intro.tsx';
import { unkept } from './keeping.ts';
import { Later } from './later.tsx';
import { Measure } from './measure.tsx';
import { awaited, troubles } from './pairs.ts';
import { Paper } from './paper.tsx';
import { Parts } from './parts.tsx';
import { Quilting } from './quilting.tsx';
import { Said } from './said.tsx';
import { hasAddress } from './sharing.ts';
import { busy, isOld, look, notice, partNow, shown, stopWork } from './store.ts';
import { Swag } from './swag.tsx';
import { Wishes } from './wishes.tsx';
import { Words } from './words.tsx';

export const App = () => {
  // What is typed or picked in one part is nothing of another: its fields begin anew.
  const part = partNow.value;
  return (
    // The whole page takes dropped files; each thing that drops do has a button too.
    // biome-ignore lint/a11y/noStaticElementInteractions: dropping is a short cut of the buttons
    <div
      class="page"
      onDragOver={(event) => event.preventDefault()}
      onDrop={(event) => {
        event.preventDefault();
        void takeFiles([...(event.dataTransfer?.files ?? [])]);
      }}
    >
      <a class="skip" href="#measure">
        {headWords.skip}
      </a>
      <Head />
      <Intro />
      <Notices />
      <Parts />
      <Later name="trace" />
      <main>
        <div class="sight">
          <Measure key={part} />
        </div>
        <div class="way">
          <Figures key={part} />
          <Templates />
          <Wishes key={part} />
          <Fits />
          <Swag key={part} />
          <Quilting key={part} />
          <Colours />
          <Words />
          <Paper />
        </div>
        <Later name="designs" />
      </main>
      <Foot />
      <Told />
      <Note />
    </div>
  );
};

const Notices = () => {
  const names = [...new Set(busy.value)];
  return (
    <section
      class={`notices${notice.value?.isWrong || unkept.value.length > 0 ? ' stays' : ''}`}
      aria-label={headWords.messages}
    >
      <Said at="head" />
      <div class="said">
        <div role="status" class={unkept.value.length > 0 ? 'notice wrong' : ''}>
          {unkept.value.map((words) => (
            <p key={words}>{words}</p>
          ))}
        </div>
      </div>
      {names.length > 0 ? (
        <div class="working">
          <span>{headWords.workingOut({ what: names })}</span>
          <button type="button" onClick={stopWork}>
            {headWords.stop}
          </button>
        </div>
      ) : null}
    </section>
  );
};

/** For screen readers: what each change comes to. */
const Told = () => {
  const answer = look.value;
  const design = shown.value;
  const words = troubles.value[0]
    ? headWords.doesNotWorkOut({ problem: troubles.value[0].text })
    : design && awaited.value.length === 0 && !isOld.value
      ? headWords.comesTo({ design: design.summary, ways: answer?.found ?? 0 })
      : '';
  return (
    <div class="unseen" role="status" aria-live="polite">
      {words}
    </div>
  );
};

const Foot = () => (
  <footer>
    <p>
      <strong>{footWords.stays}</strong> {footWords.staysMore}
      {hasAddress ? ` ${footWords.link}` : null}
    </p>
    <p>{footWords.care}</p>
  </footer>
);
