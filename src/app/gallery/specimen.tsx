import type { ComponentChildren, JSX } from 'preact';

export interface SpecimenProps {
  readonly name: string;
  readonly children: ComponentChildren;
}

/** One piece in one state, with its name over it. */
export function Specimen({ name, children }: SpecimenProps): JSX.Element {
  return (
    <section class="specimen" aria-label={name}>
      <h2>{name}</h2>
      {children}
    </section>
  );
}
