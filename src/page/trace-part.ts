/** The script that is loaded with the first picture of a template, or the first points of one. */

import { addPart } from './ui/later.tsx';
import { openPoints, startPoints } from './ui/points.tsx';
import { TemplateView } from './ui/template-view.tsx';
import { beginTracing, copyKept, forget, goOnWith, startTracing, throwOut } from './ui/tracing.ts';
import './styles/trace.css';

startTracing();
startPoints();
addPart('trace', {
  View: TemplateView,
  points: openPoints,
  begin: beginTracing,
  goOn: goOnWith,
  forget,
  throwOut,
  copy: copyKept,
});
