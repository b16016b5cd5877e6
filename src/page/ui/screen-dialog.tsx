/** A dialog over the whole window, which fills the screen as well where a browser lets it. */

import type { Signal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { screenWords } from '../words/words.ts';

export const ScreenDialog = ({
  name,
  title,
  opened,
  isBare = false,
  children,
}: {
  readonly name: string;
  readonly title: string;
  /** How often it was opened. */
  readonly opened: Signal<number>;
  readonly isBare?: boolean;
  readonly children: ComponentChildren;
}) => {
  const dialog = useRef<HTMLDialogElement>(null);
  const stage = useRef<HTMLDivElement>(null);
  useEffect(() => dialog.current?.showModal(), [opened.value]);
  return (
    <dialog
      ref={dialog}
      class={name}
      aria-labelledby={`${name}-title`}
      onClose={() => {
        if (document.fullscreenElement) void document.exitFullscreen();
      }}
    >
      {/* A dialog itself cannot fill a screen; what is in it can. */}
      <div ref={stage} class={`stage${isBare ? ' bare' : ''}`}>
        <div class="panel-head">
          <h2 id={`${name}-title`}>{title}</h2>
          <div class="steps">
            {document.fullscreenEnabled ? (
              <button type="button" onClick={() => void stage.current?.requestFullscreen().catch(() => {})}>
                {screenWords.fill}
              </button>
            ) : null}
            <button type="button" onClick={() => dialog.current?.close()}>
              {screenWords.close}
            </button>
          </div>
        </div>
        {children}
      </div>
    </dialog>
  );
};
