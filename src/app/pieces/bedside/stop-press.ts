/**
 * Stop must be heard from a gloved finger that slides. So it acts when the finger lifts, wherever that
 * is, and when the device takes the touch away. The click that follows a lift is the same press; a click
 * made by a key or a screen reader has no touch before it and always counts.
 */
export type StopPress = 'idle' | 'down' | 'fired';
export type StopEvent = 'down' | 'lift' | 'cancel' | 'click' | 'key';

export interface StopStep {
  readonly state: StopPress;
  readonly fires: boolean;
}

export function stopPress(state: StopPress, event: StopEvent): StopStep {
  switch (event) {
    case 'down':
      return { state: 'down', fires: false };
    case 'lift':
    case 'cancel':
      return state === 'down' ? { state: 'fired', fires: true } : { state, fires: false };
    case 'click':
      return { state: 'idle', fires: state !== 'fired' };
    case 'key':
      return { state: 'idle', fires: true };
  }
}
