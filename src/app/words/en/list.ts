export function listWords() {
  return {
    noOneYet: 'No one yet',
    why: 'Why:',
    who: 'Who:',
    sort: (column: string) => `Sort by ${column}`,
    stepOf: ({ step, of }: { step: number; of: number }) => `Step ${step} of ${of}`,
    page: ({ page, of }: { page: number; of: number }) => `Page ${page} of ${of}`,
  };
}
