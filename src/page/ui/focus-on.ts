/** What is to have the focus once it is there: a break that was just added, by its name. */

import { signal } from '@preact/signals';

export const focusOn = signal<string | undefined>(undefined);
