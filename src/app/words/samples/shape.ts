import type { AllWords } from '../en-all.ts';

/** The arguments one message takes, or nothing for a plain string. */
type SampleOf<Message> = Message extends (...args: infer Args) => unknown
  ? Args
  : Message extends string
    ? undefined
    : { readonly [Key in keyof Message]: SampleOf<Message[Key]> };

type Area = Exclude<keyof AllWords, 'language' | 'dates'>;

/** Calls for every message that takes something. A message without one does not type-check. */
export type Samples = {
  readonly [Key in Area]: Functions<SampleOf<AllWords[Key]>>;
};

/** Only the parts that are calls, or hold some. */
type Functions<Part> = Part extends readonly unknown[]
  ? Part
  : {
      readonly [Key in keyof Part as Part[Key] extends undefined
        ? never
        : keyof Functions<Part[Key]> extends never
          ? never
          : Key]: Functions<Part[Key]>;
    };
