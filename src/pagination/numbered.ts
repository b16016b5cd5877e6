/** Sheets of one part among those of others: its number goes before each label, so that no two sheets are called the same. */

import type { SheetPlan } from './sheet-plan.ts';

/** `2-B3` for B3 of part 2. */
export const numbered = (plan: SheetPlan, part: number): SheetPlan => {
  const named = (label: string): string => `${part}-${label}`;
  return {
    ...plan,
    sheets: plan.sheets.map((sheet) => ({
      ...sheet,
      label: named(sheet.label),
      edges: sheet.edges.map((edge) => ({ ...edge, neighbour: named(edge.neighbour) })),
    })),
    skipped: plan.skipped.map((sheet) => ({ ...sheet, label: named(sheet.label) })),
  };
};
