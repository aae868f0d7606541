import type { JSX } from 'preact';
import type { Place } from '../../../care/rounds/first-order.ts';
import { Icon } from '../../pieces/icon/icon.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { whyHere } from './why-here.ts';

interface OrderLineProps {
  readonly place: Place;
  readonly at: number;
  readonly of: number;
  readonly name: string;
  readonly onMove: (by: -1 | 1) => void;
}

/** One person's place, why it is theirs, and a way up and down. */
export function OrderLine({ place, at, of, name, onMove }: OrderLineProps): JSX.Element {
  const words = useAllWords();
  const say = words.prepare;
  return (
    <li class="order-line" data-cohort={place.cohort}>
      <span class="order-at" aria-hidden="true">
        {at}
      </span>
      <div>
        <p class="order-name">{name}</p>
        <p class="order-why">
          <span class="unseen">{say.whyHere} </span>
          {whyHere(place, words)}
        </p>
      </div>
      <div class="order-moves">
        <MoveButton
          id={`${place.person}-up`}
          icon="up"
          label={say.up(name)}
          off={at === 1}
          onPress={() => onMove(-1)}
        />
        <MoveButton
          id={`${place.person}-down`}
          icon="down"
          label={say.down(name)}
          off={at === of}
          onPress={() => onMove(1)}
        />
      </div>
    </li>
  );
}

function MoveButton({
  id,
  icon,
  label,
  off,
  onPress,
}: {
  readonly id: string;
  readonly icon: 'up' | 'down';
  readonly label: string;
  readonly off: boolean;
  readonly onPress: () => void;
}): JSX.Element {
  return (
    <button
      id={id}
      type="button"
      class="button"
      aria-label={label}
      disabled={off}
      onClick={onPress}
    >
      <Icon name={icon} />
    </button>
  );
}
