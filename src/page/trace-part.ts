/** The script that is loaded with the first picture of a template, the first points of one, or one of hers on the shelf. */

import { InWork } from './ui/in-work.tsx';
import { addPart } from './ui/later.tsx';
import { OwnTemplate } from './ui/own-template.tsx';
import { openPoints, startPoints } from './ui/pointing.ts';
import { TemplateView } from './ui/template-view.tsx';
import { beginTracing, forget, startTracing } from './ui/tracing.ts';
import './styles/trace.css';

startTracing();
startPoints();
addPart('trace', {
  ...{ View: TemplateView, Own: OwnTemplate, InWork },
  ...{ begin: beginTracing, points: openPoints, forget },
});
