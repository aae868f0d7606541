import type { UploadSetting } from '../../../care/results/upload.ts';

export type Column = UploadSetting['data']['columns'][number];

export const columnWith = (
  columns: readonly Column[],
  at: number,
  more: Partial<Column>,
): Column[] => columns.map((column, i) => (i === at ? { ...column, ...more } : column));

export const columnWithout = (columns: readonly Column[], at: number): Column[] =>
  columns.filter((_, i) => i !== at);

export function columnMoved(columns: readonly Column[], at: number, by: -1 | 1): Column[] {
  const next = [...columns];
  const [column] = next.splice(at, 1);
  if (column !== undefined) next.splice(at + by, 0, column);
  return next;
}
