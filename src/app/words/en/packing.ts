import type { Stage } from '../../../care/custody/test.ts';
import type { LanguageTools } from '../language-tools.ts';

export function packingWords({ dates, plural, list }: LanguageTools) {
  const stages: Record<Stage, string> = {
    opened: 'opened',
    checked: 'looked at',
    'tube-labelled': 'label on the tube',
    labelled: 'labelled',
    begun: 'begun',
    taken: 'swab out',
    closed: 'lid on',
    sealed: 'sealed',
    packed: 'packed',
    spoiled: 'closed for ever',
  };
  return {
    stages,
    title: 'Pack table',
    lead: 'Scan each bag as it goes into the box.',
    frame: 'Who is in the box',
    isIn: (name: string) => `${name}'s bag is in the box.`,
    count: (packed: number, of: number) => `${packed} of ${of} in the box.`,
    none: 'No bag is waiting.',
    leaks: 'A bag leaks',
    leakLead: 'Scan the bag that leaks.',
    leakBack: 'No bag leaks',
    leaked: (name: string) =>
      `${name}'s kit is closed for ever. Waste bag, wipe, change gloves. ${name} is due again.`,
    missing: 'Not in the box yet',
    lastSeen: (stage: string, at: string, who: string) => `${stage} ${dates.time(at)}, by ${who}`,
    onTablet: (tablet: string) => `on ${tablet}`,
    atBedside: 'Still at the bedside',
    goOn: 'Finish the turn',
    goOnWith: (name: string) => `Finish the turn with ${name}`,
    held: 'Does not fit: a senior decides',
    read: 'Read it',
    shut: 'Shut the box',
    shutSteps: {
      tube: 'Each tube lies in its transport tube, with its pad.',
      bag: 'Each bag is sealed and dry.',
      outer: 'All bags are in the outer box. It is shut, its label to the top.',
      wipe: 'The box is wiped. Gloves off, hands clean.',
    },
    shutAndClose: 'All four done: shut the box, close the round',
    shutOnly: 'Shut the box without them',
    closeRound: 'Close the round',
    notSwabbed: (names: readonly string[]) => `Not swabbed yet: ${list(names)}.`,
    notSwabbedHow: 'Once it is closed, nobody starts in this round. Say why they are left off.',
    nothingPacked: 'Nobody was swabbed. There is no box.',
    boxShut: (count: number, at: string) =>
      `${plural(count, { one: 'Box shut on 1 bag', other: `Box shut on ${count} bags` })}, ${dates.time(at)}.`,
    boxChanged: (count: number) =>
      `Its bags have changed. ${plural(count, { one: '1 bag is', other: `${count} bags are` })} in it now.`,
    boxChangedHow: 'Open it and count the bags. Then shut it again.',
    closed: 'The round is closed. It tallies.',
    early: 'The courier is here early',
    earlyLead: 'What is in the box goes now. The rest goes to a second round.',
    goesNow: (count: number) =>
      plural(count, { one: '1 bag goes now.', other: `${count} bags go now.` }),
    moves: (names: readonly string[]) => `To the second round: ${list(names)}.`,
    movesNobody: 'Everybody has had their turn.',
    scanFirst: (names: readonly string[]) =>
      `Not scanned yet: ${list(names)}. Scan them now if they are here.`,
    staysOpen: (names: readonly string[]) =>
      `Still at the bedside: ${list(names)}. They go with a later box.`,
    nextCourier: 'When does the courier come again?',
    send: 'Shut the box, send it, move the rest',
    fillCourier: 'Say when the courier comes again.',
  };
}
