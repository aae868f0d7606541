import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { Button } from '../../pieces/form/button.tsx';
import { FileField } from '../../pieces/form/file-field.tsx';
import { PersonBadge } from '../../pieces/list/person-badge.tsx';
import { useAnnounce } from '../../pieces/page/live-region.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { smallPhoto } from './photo.ts';
import './photo-field.css';

export interface PhotoFieldProps {
  readonly name: string;
  /** A data URL, or "" for none. */
  readonly value: string;
  readonly onValue: (photo: string) => void;
  readonly problem?: string | undefined;
}

/** A face from the camera or a file, made small before it is kept. */
export function PhotoField({ name, value, onValue, problem }: PhotoFieldProps): JSX.Element {
  const { people } = useAllWords();
  const say = people.form;
  const announce = useAnnounce();
  const [bad, setBad] = useState(false);
  const take = async (file: File): Promise<void> => {
    const photo = await smallPhoto(file);
    setBad(photo === undefined);
    if (photo === undefined) return;
    onValue(photo);
    announce(say.photoIn);
  };
  return (
    <div class="photo-field">
      <PersonBadge name={name || '?'} photo={value || undefined} size="large" />
      <div class="photo-field-file">
        <FileField
          id="photo"
          label={say.photoTake}
          hint={say.photoHint}
          accept="image/*"
          optional
          problem={bad ? say.photoBad : problem}
          onFile={(file) => void take(file)}
        />
        {value !== '' && (
          <Button kind="quiet" onPress={() => onValue('')}>
            {say.photoOut}
          </Button>
        )}
      </div>
    </div>
  );
}
