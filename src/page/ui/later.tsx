/**
 * What comes when it is first wanted, so that the page opens with less: a script of its own with its style sheet. It
 * takes from the first script all that that has, and puts what it adds into the page's scope.
 */

import { signal } from '@preact/signals';
import type { ComponentProps, ComponentType } from 'preact';
import type { Outcome } from '../engine/client.ts';
import { loadScript, loadStyle } from '../engine/hire.ts';
import type { Fonts, PaperChoices, Printed } from '../engine/messages.ts';
import type { How } from './hand-over.ts';

/** What each script adds, by its name. */
interface LaterParts {
  /** A template from a picture of it, or from points. */
  readonly trace: {
    readonly View: ComponentType;
    readonly begin: (picture: File) => void;
    readonly points: () => void;
    /** Lets a kept picture go. */
    readonly forget: (key: string) => void;
    /** What can be done with one of her templates on the shelf. */
    readonly Own: ComponentType<{ readonly name: string; readonly title: string }>;
    /** Pictures that are no templates yet. */
    readonly InWork: ComponentType;
  };
  /** A swag at its true size on the screen. */
  readonly glass: { readonly View: ComponentType; readonly open: () => void };
  /** A design at its true size on the cloth, by a projector. */
  readonly projector: { readonly View: ComponentType<ShowChoices>; readonly open: () => void };
  /** Her designs. */
  readonly designs: {
    readonly View: ComponentType;
    readonly keep: () => void;
    readonly take: (fileName: string, text: string) => void;
  };
  /** The figures of the fills. */
  readonly fills: { readonly View: ComponentType };
  /** A class from a pasted table. */
  readonly class: { readonly View: ComponentType<ClassPaper>; readonly open: () => void };
}

/** What of the design may be shown, as the command's --show takes it and in words. */
export interface ShowChoices {
  readonly choices: readonly (readonly [string, string])[];
}

/** How what is made of a class goes on paper. */
export interface ClassPaper {
  /** Undefined where a measurement cannot be used. */
  readonly choices: PaperChoices | undefined;
  /** Makes pages and hands them over, as all others are. */
  readonly give: (
    ask: (choices: PaperChoices, fonts: Fonts) => Promise<Outcome<Printed>>,
    how: How,
  ) => Promise<void>;
}

type Name = keyof LaterParts;

const scope = globalThis as { swagwright_later?: Partial<LaterParts> };

/** How a script hands over what it adds. */
export const addPart = <N extends Name>(name: N, part: LaterParts[N]): void => {
  scope.swagwright_later = { ...scope.swagwright_later, [name]: part };
};

/** Those that are there. */
export const parts = signal<Partial<LaterParts>>({});

/** Throws where the script cannot be loaded. */
export const wantPart = async <N extends Name>(name: N): Promise<LaterParts[N]> => {
  if (!scope.swagwright_later?.[name])
    await Promise.all([loadScript(`${name}.js`), loadStyle(`${name}.css`)]);
  const part = scope.swagwright_later?.[name];
  if (!part) throw new Error(`${name}.js adds nothing`);
  parts.value = scope.swagwright_later!;
  return part;
};

/** What a script shows, once it is there. */
export const Later = <N extends Name>({
  name,
  ...props
}: { readonly name: N } & ComponentProps<LaterParts[N]['View']>) => {
  const View = parts.value[name]?.View as ComponentType<object> | undefined;
  return View ? <View {...props} /> : null;
};
