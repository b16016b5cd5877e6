/** How a command is defined. */

import type { Command } from 'commander';
import type { Io } from './io.ts';

/** Adds a command's arguments, options and help, and says what it does when it is called. */
export type Define = (command: Command, io: Io) => void;
