import type { JSX } from 'preact';
import { describedBy, type FieldCommon, FieldFrame } from './field-parts.tsx';
import './field.css';
import './file-field.css';

export interface FileFieldProps extends FieldCommon {
  /** Kinds of file, as the accept attribute takes them. */
  readonly accept: string;
  readonly onFile: (file: File) => void;
}

/** One file from the device, by its own picker. The same file may be picked twice running. */
export function FileField(props: FileFieldProps): JSX.Element {
  const { id, accept, onFile, problem } = props;
  return (
    <FieldFrame {...props}>
      <input
        id={id}
        type="file"
        class="field-input"
        accept={accept}
        aria-invalid={problem !== undefined}
        aria-describedby={describedBy(props)}
        onChange={(event) => {
          const [file] = event.currentTarget.files ?? [];
          event.currentTarget.value = '';
          if (file !== undefined) onFile(file);
        }}
      />
    </FieldFrame>
  );
}
