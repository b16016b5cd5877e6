/** A picture of a template, the outline that was found in it, and the ends of the working edge to be set right. */

import { useEffect, useRef } from 'preact/hooks';
import { capital } from '../../document/index.ts';
import type { Level, LineSide } from '../../trace/index.ts';
import type { TracedOutline } from '../engine/messages.ts';
import { handWords, traceWords } from '../words/words.ts';
import { saveAs } from './browser.ts';
import { isHandUnread } from './by-hand.ts';
import { Choice, NameField, Panel, Troubles } from './fields.tsx';
import { takeTemplate } from './files.tsx';
import { chosen, focusFirst } from './focus-on.ts';
import { giveTo, keptPictures } from './kept-pictures.ts';
import type { Place } from './pointer.ts';
import { say as announce } from './store.ts';
import { isThrough, pictureHand, stretch } from './tapping.ts';
import { BreakList } from './trace-breaks.tsx';
import { CameraHeight } from './trace-height.tsx';
import { Acrylic } from './trace-lines.tsx';
import { MendPart } from './trace-mend.tsx';
import { FitOfPrint, ScaleFields } from './trace-size.tsx';
import { Pictured } from './traced-picture.tsx';
import {
  canStepBack,
  canStepOn,
  isStopped,
  isTraced,
  keepAndPutAway,
  putAway,
  resolutionSaid,
  say,
  stepBack,
  stepOn,
  traceAgain,
  traced,
  traceTold,
  tracing,
} from './tracing.ts';

export const TraceView = () => {
  const now = tracing.value;
  const answer = traced.value;
  const place = useRef<HTMLDivElement>(null);
  const key = now?.key;
  useEffect(() => {
    stretch.value = undefined;
    pictureHand.tool.value = undefined;
    isThrough.value = false;
    chosen.value = undefined;
  }, [key]);
  useEffect(() => {
    if (key === undefined || answer === undefined) return;
    place.current?.scrollIntoView({ block: 'start' });
    // Unless she is writing somewhere: then it is only told.
    const head = place.current?.querySelector('h2');
    if (head && !(document.activeElement instanceof HTMLInputElement)) {
      head.tabIndex = -1;
      head.focus({ preventScroll: true });
    }
  }, [key, answer === undefined]);
  if (!now || !answer) return null;
  const { outline, template } = answer;
  const keep = async (): Promise<void> => {
    // A figure may be typed and this be pressed at once, before the button knows of it.
    if (!template || !isTraced.peek()) return;
    // One that came from the shelf goes back to its place.
    const of = keptPictures.value.find((k) => k.key === now.keptAs)?.of;
    const kept = await takeTemplate(
      of ?? template.name,
      template.text,
      of === undefined ? 'beside' : 'in-place',
      // Before it is on the shelf: there it may have to make room for another window's, and the picture with it.
      (name) => giveTo(now.keptAs, name),
    );
    if (!kept) {
      giveTo(now.keptAs, of);
      return;
    }
    await keepAndPutAway();
    focusFirst('#templates');
    announce(handWords.onShelf(kept));
  };
  const mayKeep = template && isTraced.value && !isHandUnread(now);
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: its keys are short cuts of two buttons
    <div ref={place} class="tracing" onKeyDown={stepKeys}>
      <Panel
        id="trace"
        title={traceWords.title}
        lead={traceWords.lead}
        aside={
          <div class="steps">
            <button type="button" disabled={!canStepBack.value} onClick={stepBack}>
              {handWords.back}
            </button>
            <button type="button" disabled={!canStepOn.value} onClick={stepOn}>
              {handWords.again}
            </button>
            <button
              type="button"
              onClick={() => {
                putAway();
                focusFirst('#templates');
              }}
            >
              {traceWords.putAway}
            </button>
          </div>
        }
      >
        <div class="trace-beside">
          <Pictured outline={outline} width={answer.width} height={answer.height} />
          <div class="trace-said">
            <NameField
              label={handWords.called}
              placeholder={now.fileName.replace(/\.[a-z0-9]{1,5}$/i, '')}
              value={now.title}
              onType={(title) => say({ title })}
            />
            <ScaleFields ofFile={answer.pixelsPerMm} outline={outline} />
            {outline?.kind === 'line' ? (
              <Choice
                label={traceWords.line.label}
                value={now.line ?? outline.side ?? 'middle'}
                options={[
                  ['middle', traceWords.line.middle],
                  ['inner', traceWords.line.inner],
                  ['outer', traceWords.line.outer],
                ]}
                onChoose={(line) => say({ line: line as LineSide })}
              />
            ) : null}
            {outline?.edge ? (
              <>
                <EdgeButtons outline={outline} edge={outline.edge} />
                <Choice
                  label={traceWords.level.label}
                  value={now.level ?? 'back'}
                  options={[
                    ['back', traceWords.level.back],
                    ['ends', traceWords.level.ends],
                    ['picture', traceWords.level.picture],
                  ]}
                  onChoose={(level) => say({ level: level as Level })}
                />
                <BreakList hand={pictureHand} outline={outline} />
              </>
            ) : null}
            {outline ? <MendPart outline={outline} /> : null}
            <Acrylic hand={pictureHand} outline={outline}>
              {outline?.source === 'capture-sheet' ? <CameraHeight /> : null}
            </Acrylic>
            <FitOfPrint outline={outline} template={template} />
            <p class="unseen" role="status">
              {traceTold.value}
            </p>
            {answer.problems.length > 0 ? (
              <div class="notice wrong" role="status">
                <Troubles list={answer.problems} />
              </div>
            ) : (
              <div role="status">
                <ul>
                  {[...answer.doubts, ...answer.words].map((line) => (
                    <li key={line} class={answer.doubts.includes(line) ? 'wrong' : ''}>
                      {capital(line).replace(/\.$/, '')}.
                    </li>
                  ))}
                </ul>
              </div>
            )}
            {isStopped.value ? (
              <p class="wrong" role="status">
                {traceWords.isOld}{' '}
                <button type="button" onClick={traceAgain}>
                  {traceWords.workOut}
                </button>
              </p>
            ) : null}
            {resolutionSaid(now.scale) === 'wrong' ? <p class="hint">{traceWords.size.missing}</p> : null}
            <div class="steps">
              <button type="button" class="main" disabled={!mayKeep} onClick={() => void keep()}>
                {handWords.toShelf}
              </button>
              <button
                type="button"
                disabled={!mayKeep}
                onClick={() =>
                  template && isTraced.peek() && saveAs(template.name, 'text/yaml', template.text)
                }
              >
                {handWords.saveFile}
              </button>
            </div>
          </div>
        </div>
      </Panel>
    </div>
  );
};

/** While she is at the picture, undo is about the picture. */
const stepKeys = (event: KeyboardEvent): void => {
  if (!(event.ctrlKey || event.metaKey) || event.target instanceof HTMLInputElement) return;
  const key = event.key.toLowerCase();
  if (key === 'z' && !event.shiftKey) stepBack();
  else if (key === 'y' || (key === 'z' && event.shiftKey)) stepOn();
  else return;
  (document.activeElement as HTMLElement | null)?.blur();
  event.preventDefault();
  event.stopPropagation();
};

/** The outline goes both ways round from one end to the other. */
const EdgeButtons = ({
  outline,
  edge,
}: {
  readonly outline: TracedOutline;
  readonly edge: readonly Place[];
}) => {
  const [heel, crown] = [edge[0], edge.at(-1)];
  const other = outline.foot === 'left' ? 'right' : 'left';
  return (
    <div class="steps">
      <button type="button" onClick={() => say({ heel: crown, crown: heel, foot: other })}>
        {traceWords.swapEnds}
      </button>
      <button type="button" onClick={() => say({ heel, crown, foot: other })}>
        {traceWords.otherSide}
      </button>
    </div>
  );
};
