import type { ChainValue, DeviceId, FactId, ServiceId } from '../../ids.ts';
import type { Head } from '../../store.ts';

export interface HeadRow {
  readonly service: ServiceId;
  readonly format: number;
  readonly position: number;
  readonly chain: ChainValue;
  readonly device: DeviceId | null;
  readonly seq: number;
  readonly last: FactId;
  readonly pending: number;
  readonly rewinds: number;
}

export function headOf(row: HeadRow): Head {
  const { service, format, position, chain, pending, rewinds, device, seq, last } = row;
  const head = { service, format, position, chain, pending, rewinds };
  return device === null ? head : { ...head, device: { id: device, seq, last } };
}

export type Row = Record<string, unknown>;

/** SQL's null is the port's absent. */
export function withoutNulls(row: Row): Row {
  if (row['private'] === null) delete row['private'];
  if (row['aside'] === null) delete row['aside'];
  return row;
}
