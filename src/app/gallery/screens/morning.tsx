import { Button } from '../../pieces/form/button.tsx';
import type { WorkListProps } from '../../pieces/list/work-list.tsx';

/** What a service might wake up to, in the order of the page. */
export const morning: readonly WorkListProps[] = [
  {
    title: 'Without a name',
    items: [
      {
        key: 'positive',
        state: 'look',
        when: '31 h left',
        what: 'Oriel tested positive. Ring her doctor about treatment.',
        why: ['positive result, 06:12', 'treatment hours'],
        action: (
          <Button kind="main" href="#name" label="Put a name to it: Oriel">
            Put a name to it
          </Button>
        ),
      },
    ],
  },
  {
    title: 'Tubes here, rounds still open',
    items: [
      {
        key: 'tubes',
        state: 'hand',
        when: '57 h left',
        who: 'Wren',
        what: 'Two tubes are in the cool box. The courier did not come.',
        why: ['kit storage, 72 h'],
        action: (
          <Button href="#book" label="Book again: courier">
            Book again
          </Button>
        ),
      },
      {
        key: 'unregistered',
        state: 'look',
        when: 'Since Wed',
        what: 'Three tests from yesterday are not registered. The site was down.',
        why: ['register the same day'],
        action: (
          <Button href="#register" label="Register: three tests">
            Register
          </Button>
        ),
      },
    ],
  },
  {
    title: 'Results late',
    items: [
      {
        key: 'late',
        state: 'hand',
        when: 'From 08:00',
        who: 'Jonah',
        what: "Tamsin's result is 74 hours old. Ring the laboratory when it opens.",
        why: ['result by 72 h'],
        action: (
          <Button href="#call" label="How to ring: laboratory">
            How to ring
          </Button>
        ),
      },
    ],
  },
  {
    title: "Can't go ahead yet",
    items: [
      {
        key: 'cor',
        state: 'look',
        when: 'By 10:00',
        what: "Cor's decision ended on 2 June. Ask for a review first.",
        why: ['decision in date'],
        action: (
          <Button href="#ask" label="Ask for a review: Cor">
            Ask for a review
          </Button>
        ),
      },
    ],
  },
  {
    title: 'Tablets',
    items: [
      {
        key: 'tablet',
        state: 'todo',
        when: 'Before ten',
        who: 'Pia',
        what: 'The blue tablet has 24 % left. It last met the server on Tuesday.',
        why: ['30 % or more for a round'],
      },
    ],
  },
];
