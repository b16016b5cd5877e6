/** Files in and out: plans and templates opened or dropped, plans saved. All within the browser. */

import { useRef } from 'preact/hooks';
import { describeProblem, textOf } from '../../document/index.ts';
import { NO_START } from '../engine/client.ts';
import type { OwnTemplate, Trouble } from '../engine/messages.ts';
import { newPlan, paperIn } from '../plan/first-figures.ts';
import { listAt } from '../plan/plan-text.ts';
import { entitled, freeName, freeTitle, isSame, otherwiseCalled } from '../plan/shelf.ts';
import { refusal, type ShelfFile, shelfFrom, shelfText, unpackedWords } from '../plan/shelf-file.ts';
import { MOST_OWN, MOST_TEXT } from '../plan/state.ts';
import { filesWords, noticeWords, planWords, workWords } from '../words/words.ts';
import { readOwnName, saveAs } from './browser.ts';
import { isDesigns, takeDesigns } from './designs-there.ts';
import { unitsNow } from './fields.tsx';
import { keptPictures } from './kept-pictures.ts';
import { wantPart } from './later.tsx';
import { nameOfPlan, notInIt } from './plan-name.ts';
import {
  addOwn,
  aside,
  complain,
  during,
  edit,
  FULL,
  notice,
  openFrom,
  otherTitles,
  quick,
  replaceState,
  say,
  state,
  thorough,
} from './store.ts';

/** Far more than any plan or template; files larger than a shelf full of them are not even read. */
const MOST_BYTES = 4 * MOST_TEXT;

/** Drawings are wordier; what reads them refuses more. */
const MOST_DRAWING = 4_000_000;

/** One after the other: each is looked at by itself. */
export const takeFiles = async (files: Iterable<File>): Promise<void> => {
  notice.value = undefined;
  for (const file of files) await takeFile(file);
};

const takeFile = async (file: File): Promise<void> => {
  if (/\.svg$/i.test(file.name)) {
    await takeDrawing(file);
    return;
  }
  if (/\.pdf$/i.test(file.name)) {
    complain(filesWords.pdf({ file: file.name }));
    return;
  }
  if (PICTURE.test(file.name) || file.type.startsWith('image/')) {
    await takePicture(file);
    return;
  }
  const isTooLarge = (): void => complain(filesWords.tooLarge({ file: file.name }));
  if (file.size > (MOST_OWN + 1) * MOST_BYTES) return isTooLarge();
  const text = await read(file);
  if (text === undefined) return;
  if (isDesigns(text)) return takeDesigns(file.name, text);
  const shelf = shelfFrom(text);
  if (shelf === 'stray') return complain(filesWords.stray({ file: file.name }));
  if (shelf) {
    await takeShelf(file.name, shelf);
    return;
  }
  if (text.length > MOST_TEXT) return isTooLarge();
  // Which it is, a reader of either kind says; a plan has a layout and a template an edge.
  if (/^\s*["']?(layout|parts)["']?\s*:/m.test(text))
    await openFrom({ plan: text, own: state.value.own, taken: undefined }, file.name, file.name);
  else await takeTemplate(file.name, text);
};

/** The file's text; what is none is said as the commands say it. */
const read = async (file: File): Promise<string | undefined> => {
  const text = textOf(new Uint8Array(await file.arrayBuffer()));
  if (typeof text === 'string') return text;
  complain(describeProblem({ ...text, place: { file: file.name } }));
  return undefined;
};

const PICTURE = /\.(png|jpe?g|gif|webp|avif|tiff?|bmp|heic|heif)$/i;

const tracePart = () =>
  during(workWords.picture, wantPart('trace')).catch(() => {
    complain(NO_START.text);
    return undefined;
  });

const takePicture = async (file: File): Promise<void> => (await tracePart())?.begin(file);

/** Opens the sheet on which points of a template are typed. */
export const openPoints = async (): Promise<void> => (await tracePart())?.points();

/** A drawing of a template becomes one; its file is hers, for another computer. */
const takeDrawing = async (file: File): Promise<void> => {
  if (file.size > MOST_DRAWING) {
    complain(filesWords.drawingTooLarge({ file: file.name }));
    return;
  }
  const svg = await read(file);
  if (svg === undefined) return;
  const question = {
    kind: 'drawing',
    fileName: file.name,
    svg,
    units: unitsNow(),
  } as const;
  const made = await during(workWords.template, thorough.ask(question));
  if (made.kind === 'stopped') return;
  if (made.kind === 'problems') {
    complain(filesWords.unusable({ file: file.name }), made.problems);
    return;
  }
  const { name, text, words } = made.answer;
  const kept = await takeTemplate(name, text);
  if (!kept) return;
  saveAs(name, 'text/yaml', text);
  say(filesWords.madeOfDrawing({ ...kept, name, words }));
};

/** All templates of a file that the page wrote; those that are on the shelf already stay as they are. */
const takeShelf = async (fileName: string, { templates, refused, beyond }: ShelfFile): Promise<void> => {
  const added: Shelved[] = [];
  const bad = [...refused];
  let there = 0;
  for (const { name: written, text } of templates) {
    const name = readOwnName(written);
    if (state.value.own.some((t) => isSame(t, { name, text }))) there++;
    else {
      const kept = await shelve(name, text, 'beside');
      if (kept === 'stopped') {
        // What was not come to is as it was; that it was stopped is said already.
        if (added.length === 0) return;
        break;
      }
      if ('title' in kept) added.push(kept);
      // One line for each: its first problem says where to begin.
      else bad.push(kept.troubles[0] ?? refusal(name.replace(/^\.\//, ''), kept.text));
    }
  }
  const [titles, notes] = [added.map(({ title }) => title), added.map(({ note }) => note)];
  const words = unpackedWords(fileName, { added: titles, notes, there, bad: bad.length, beyond });
  const isWrong = bad.length + beyond > 0 || titles.length + there === 0;
  if (isWrong) complain(words, bad);
  else say(words);
};

/** Her templates as one file, for another device or for a class. */
export const saveShelf = (): void => {
  const { own } = state.value;
  saveAs(SHELF_FILE, 'application/json', shelfText(own));
  say(filesWords.shelfSaved({ file: SHELF_FILE }));
};

const SHELF_FILE = 'my-templates.json';

/**
 * Puts a template on the shelf, ticked, if it can be read, and says so: in place of the one of its name, or beside it
 * under a name that is free, also of pictures.
 */
export const takeTemplate = async (
  fileName: string,
  text: string,
  where: Where = 'in-place',
  beforeItIs?: (name: string) => void,
): Promise<Shelved | undefined> => {
  const kept = await shelve(fileName, text, where, beforeItIs);
  if (kept === 'stopped') return undefined;
  if ('troubles' in kept) {
    complain(kept.text, kept.troubles);
    return undefined;
  }
  say(filesWords.onShelf(kept));
  return kept;
};

/** The same without a word. */
const shelve = async (
  fileName: string,
  text: string,
  where: Where,
  beforeItIs?: (name: string) => void,
): Promise<Shelved | Refused | 'stopped'> => {
  const called = readOwnName(fileName);
  // The shelf itself may be asked for meanwhile, for what another window has put there.
  const asked = { kind: 'shelf', own: [{ name: called, text }] } as const;
  const checked = await during(workWords.template, aside.ask(asked));
  if (checked.kind === 'stopped') return 'stopped';
  const card = checked.kind === 'answer' ? checked.answer.find((c) => c.name === called) : undefined;
  const problems = checked.kind === 'problems' ? checked.problems : (card?.problems ?? []);
  if (!card?.picture) return { text: filesWords.unusable({ file: fileName }), troubles: problems };
  const name = where === 'beside' ? freeName(takenNames(), called) : called;
  beforeItIs?.(name);
  const title = freeTitle(otherTitles(name), card.title);
  if (!addOwn({ name, text: title === card.title ? text : entitled(text, title) }))
    return { text: FULL, troubles: [] };
  const chosen = listAt(state.value, ['template']);
  if (!chosen.includes(name)) edit([[['template'], [...chosen, name]]]);
  return { title, note: ` ${otherwiseCalled(card.title, title)}`.trimEnd() };
};

type Where = 'in-place' | 'beside';

/** Why a template is not on the shelf. */
interface Refused {
  readonly text: string;
  readonly troubles: readonly Trouble[];
}

/** A template that is on the shelf now. */
interface Shelved {
  readonly title: string;
  /** A sentence, with a blank before it, where it could not have the title of its file. */
  readonly note: string;
}

/** Of templates on the shelf, and of those whose pictures are kept: a step back may bring them back. */
export const takenNames = (): readonly Pick<OwnTemplate, 'name'>[] => [
  ...state.value.own,
  ...keptPictures.value.flatMap(({ of }) => (of === undefined ? [] : { name: of })),
];

/** A button for those who cannot or will not drop a file, or, of a device with a camera, to take a picture. */
export const FileButton = ({
  label,
  camera = false,
}: {
  readonly label: string;
  readonly camera?: boolean;
}) => {
  const input = useRef<HTMLInputElement>(null);
  return (
    <>
      <button type="button" class={camera ? 'camera' : undefined} onClick={() => input.current?.click()}>
        {label}
      </button>
      <input
        ref={input}
        class="unseen"
        type="file"
        tabIndex={-1}
        aria-hidden="true"
        accept={camera ? 'image/*' : '.yaml,.yml,.json,.svg,text/yaml,application/json,image/*'}
        capture={camera ? 'environment' : undefined}
        onChange={(event) => {
          const { files } = event.currentTarget;
          void takeFiles([...(files ?? [])]);
          event.currentTarget.value = '';
        }}
      />
    </>
  );
};

const planName = (): string => nameOfPlan('yaml');

/** A new quilt, in her units and for her paper, with her own templates on the shelf. */
export const startAnew = (): void => {
  const { plan, own } = state.value;
  const paper = paperIn(plan, unitsNow());
  replaceState({ plan: newPlan(unitsNow(), paper), own, taken: undefined });
  say(noticeWords.newPlan(planWords));
};

/** The plan with everything decided, as the commands read it. */
export const savePlan = async (): Promise<void> => {
  const decided = await during(workWords.plan, quick.ask({ kind: 'decided', input: state.value }));
  const text = decided.kind === 'answer' && decided.answer ? decided.answer : state.value.plan;
  saveAs(planName(), 'text/yaml', text);
  say(noticeWords.planSaved({ name: planName() }) + notInIt());
};
