import { useMemo } from 'preact/hooks';
import { policyOn } from '../../care/policy/in-force.ts';
import type { WordSettings } from '../words/settings.ts';
import type { Desk } from './desk.ts';
import { todayOf } from './desk.ts';

/** The service's own zone, and its own word for the people it supports. */
export function useWordSettings(desk: Desk): WordSettings {
  const timeZone = desk.home.service.zone;
  const { personWord } = policyOn(desk.home, todayOf(desk)).policy;
  const person = personWord ?? 'resident';
  return useMemo(() => ({ timeZone, person }), [timeZone, person]);
}
