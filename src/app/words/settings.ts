import type { PersonWord } from '../../care/policy/policy.ts';

/** What the service has chosen that changes how things are said. */
export interface WordSettings {
  /** The service's zone, an IANA name: every date and time on screen is told in it. */
  readonly timeZone: string;
  /** Each language gives the word itself. */
  readonly person: PersonWord;
}
