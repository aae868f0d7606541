import type { PictureName } from './pictures.ts';

/** What of somebody's plan the pictures depend on. */
export interface ForWhom {
  readonly throat: boolean;
  readonly selfSwab: boolean;
  /** In the words of their plan; empty where it names none. */
  readonly reward: string;
  readonly helps: string;
  readonly stopSigns: string;
  /** Who comes, as the person calls them. */
  readonly staff: readonly string[];
  /** Days within which policy expects the result, 1 or more. */
  readonly days: number;
}

/** One card: a picture, and which sentence of the catalogue stands under it. */
export interface Card {
  readonly card: CardName;
  readonly picture: PictureName;
}

/** Every sentence there is a picture for. */
export const cardNames = [
  'why',
  'who',
  'mask',
  'yes',
  'help',
  'tissue',
  'throat',
  'nose',
  'both',
  'self',
  'stop',
  'tube',
  'done',
  'reward',
  'wait',
  'result',
  'room',
  'fault',
  'ask',
] as const;
export type CardName = (typeof cardNames)[number];

/**
 * The cards for one person, in the order in which things happen: what their plan does not do, they are not
 * shown. The card of stop stands before the swab, for that is when it is needed.
 */
export function stripFor(whom: ForWhom): readonly Card[] {
  const order: (CardName | false)[] = [
    'why',
    'who',
    'mask',
    'yes',
    'stop',
    whom.helps !== '' && 'help',
    'tissue',
    whom.selfSwab && 'self',
    whom.throat && 'throat',
    whom.throat ? 'nose' : 'both',
    'tube',
    'done',
    whom.reward !== '' && 'reward',
    'wait',
    'result',
    'room',
    'fault',
    'ask',
  ];
  return order.flatMap((card) => (card === false ? [] : [{ card, picture: card }]));
}

/** The cards that belong to the minutes of the swab itself: what is shown as now and next. */
const during = new Set<CardName>([
  'who',
  'mask',
  'yes',
  'tissue',
  'self',
  'throat',
  'nose',
  'both',
  'tube',
  'done',
  'reward',
]);
export const turnCards = (cards: readonly Card[]): readonly Card[] =>
  cards.filter(({ card }) => during.has(card));
