/** The script that is loaded with the first picture of a template. */

import { addTracePart } from './ui/later.tsx';
import { TraceView } from './ui/trace.tsx';
import { beginTracing, goOnWith, startTracing } from './ui/tracing.ts';
import './styles/trace.css';

startTracing();
addTracePart({ View: TraceView, begin: beginTracing, goOn: goOnWith });
