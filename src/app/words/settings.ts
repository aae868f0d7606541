/** What the service has chosen that changes how things are said. */
export interface WordSettings {
  /** The service's zone, an IANA name: every date and time on screen is told in it. */
  readonly timeZone: string;
  readonly person: PersonWord;
}

/** What a service calls the people it supports. Each language gives the word itself. */
export type PersonWord = 'resident' | 'tenant' | 'supported';
