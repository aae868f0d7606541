export function labelWords() {
  return {
    title: 'Labels for our own kits',
    note: 'Each kit gets three: for the tube, the bag and a spare. No name stands on them.',
    notOwn: 'The policy lets this home make no labels for this kit.',
    stock: 'Which sheet of labels?',
    stockOf: (count: number, width: number, height: number) =>
      `${count} on a sheet, ${width} by ${height} mm`,
    kits: 'For how many kits?',
    kitsWrong: (most: number) => `Give a number from 1 to ${most}.`,
    startAt: 'Which label on the sheet is the first free one?',
    startWrong: (most: number) => `This sheet has labels 1 to ${most}.`,
    make: 'Make new codes',
    print: 'Print',
  };
}
