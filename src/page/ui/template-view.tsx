/** How a template of hers comes to be: from a picture of it, or point by point. */

import { PointsView } from './points.tsx';
import { TraceView } from './trace.tsx';

export const TemplateView = () => (
  <>
    <TraceView />
    <PointsView />
  </>
);
