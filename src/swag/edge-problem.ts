/** What keeps the foot from rolling along a template's edge, in words. */

import type { Problem } from '../document/index.ts';
import type { EdgeFault, Point } from '../geometry/index.ts';
import { formatLength, MM_TENTH } from '../length/index.ts';
import type { Template } from '../template/index.ts';

const at = (p: Point): string => `${formatLength(p.x, MM_TENTH)}, ${formatLength(p.y, MM_TENTH)}`;

export const describeFault = (template: Template, clearance: number, fault: EdgeFault): Problem => {
  const base = { key: 'edge', place: { file: template.name } };
  const foot = formatLength(clearance, MM_TENTH);
  switch (fault.kind) {
    case 'crosses-itself':
      return {
        ...base,
        code: 'edge-crosses-itself',
        message: `the working edge crosses or touches itself at (${at(fault.at)})`,
      };
    case 'trapped':
      return {
        ...base,
        code: 'foot-trapped',
        message: `a foot of ${foot} clearance cannot get to this edge: its two ends come too near to one another`,
        hint: 'check which side of the edge the foot is on, and the order of its points',
      };
    case 'unresolved':
      return {
        ...base,
        code: 'edge-unresolved',
        message: `the way of a foot of ${foot} clearance could not be worked out near (${at(fault.at)})`,
      };
    case 'broken':
      return { ...base, code: 'edge-broken', message: `the working edge is broken at (${at(fault.at)})` };
    case 'empty':
    case 'not-finite':
      return { ...base, code: 'edge-empty', message: 'the working edge has a piece without length' };
    default:
      return fault satisfies never;
  }
};
