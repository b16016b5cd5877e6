/** The page as a whole: what it is about, the steps in their order, and what is said while they are taken. */

import { plural } from '../../document/index.ts';
import type { Units } from '../../length/index.ts';
import { withFiguresIn } from '../plan/first-figures.ts';
import { textAt } from '../plan/plan-text.ts';
import { Fits, Templates } from './choose.tsx';
import { keepThis } from './designs-there.ts';
import { Choice, NameField, unitsNow } from './fields.tsx';
import { FileButton, savePlan, startAnew, takeFiles } from './files.tsx';
import { unkept } from './keeping.ts';
import { Later } from './later.tsx';
import { Measure } from './measure.tsx';
import { awaited, troubles } from './pairs.ts';
import { Paper } from './paper.tsx';
import { Parts } from './parts.tsx';
import { Quilting } from './quilting.tsx';
import { Said } from './said.tsx';
import { copyLink, hasAddress, savePage } from './sharing.ts';
import {
  busy,
  canRedo,
  canUndo,
  edit,
  isOld,
  look,
  notice,
  partNow,
  redo,
  setPlan,
  shown,
  state,
  stopWork,
  undo,
} from './store.ts';
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
        To your quilt’s figures
      </a>
      <Head />
      <Notices />
      <Parts />
      <Later name="trace" />
      <main>
        <div class="track">
          <Measure key={part} />
        </div>
        <div class="beside">
          <Templates />
          <Wishes key={part} />
          <Fits />
        </div>
        <div class="track">
          <Swag key={part} />
        </div>
        <div class="beside">
          <Quilting key={part} />
          <Words />
        </div>
        <Later name="designs" />
        <Paper />
      </main>
      <Foot />
      <Told />
    </div>
  );
};

const Head = () => (
  <header>
    <div class="brand">
      <svg viewBox="0 0 64 28" aria-hidden="true">
        <path class="ink seam" d="M1 24h62" />
        <path class="ink stitch" d="M2 24C6 10 14 5 17 4c3 1 11 6 15 20C36 10 44 5 47 4c3 1 11 6 15 20" />
      </svg>
      <h1>swagwright</h1>
    </div>
    <Title />
    <section class="tools" aria-label="The plan">
      <button type="button" disabled={!canUndo.value} onClick={undo}>
        Undo
      </button>
      <button type="button" disabled={!canRedo.value} onClick={redo}>
        Redo
      </button>
      <button type="button" onClick={startAnew}>
        New
      </button>
      <FileButton label="Open …" />
      <button type="button" onClick={() => void keepThis()}>
        Keep design
      </button>
      <button type="button" onClick={() => void savePlan()}>
        Save plan
      </button>
      {hasAddress ? (
        <button type="button" onClick={() => void copyLink()}>
          Copy link
        </button>
      ) : (
        <button type="button" onClick={() => void savePage()}>
          Save page
        </button>
      )}
      <Choice
        label="Figures in"
        class="inline"
        value={unitsNow()}
        options={[
          ['in', 'inches'],
          ['cm', 'centimetres'],
          ['mm', 'millimetres'],
        ]}
        onChoose={(to) => setPlan(withFiguresIn(state.value.plan, unitsNow(), to as Units))}
      />
    </section>
  </header>
);

const Title = () => (
  <NameField
    id="title"
    class="title"
    label="What this plan is called"
    isUnseen
    value={textAt(state.value, ['title']) ?? look.value?.facts?.title ?? ''}
    onType={(name) => {
      if (name !== '') edit([[['title'], name]], 'title');
    }}
  />
);

const Notices = () => {
  const names = [...new Set(busy.value)];
  return (
    <section
      class={`notices${notice.value?.isWrong || unkept.value.length > 0 ? ' stays' : ''}`}
      aria-label="Messages"
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
          <span>Working out {names.join(' and ')} …</span>
          <button type="button" onClick={stopWork}>
            Stop
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
    ? `This does not work out: ${troubles.value[0].text}`
    : design && awaited.value.length === 0 && !isOld.value
      ? `${design.summary.join(', ')}. ${plural(answer?.found ?? 0, 'way fits', 'ways fit')}.`
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
      <strong>Nothing leaves this browser.</strong> Plans, templates and pages are made here, on your own
      device; nothing is sent anywhere, and there is nobody to send it to.
      {hasAddress
        ? ' A link that you copy holds the plan in the part of the address that browsers keep to themselves.'
        : null}
    </p>
    <p>
      A needle that strikes a template shatters. Use only a foot made for ruler work and a template of the
      thickness that suits it; your machine’s and your foot’s own manuals have the last word. Keep fingers
      flat and away from the needle, stop with the needle down before you move a hand, wear eye protection,
      and test on a scrap.
    </p>
  </footer>
);
