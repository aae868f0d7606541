/** Four drawn faces that stand in for photos. Addresses of SVG text, so that no file is needed. */
const face = (hair: string, brow: number, mouth: string): string =>
  `data:image/svg+xml,${encodeURIComponent(
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 100 100"><rect width="100" height="100" fill="tan"/><path d="${hair}" fill="sienna"/><ellipse cx="50" cy="54" rx="24" ry="29" fill="wheat"/><path d="M38 ${brow}h8M54 ${brow}h8${mouth}" stroke="black" stroke-width="2" fill="none"/><circle cx="42" cy="${brow + 6}" r="2.5"/><circle cx="58" cy="${brow + 6}" r="2.5"/><path d="M20 100q30-34 60 0z" fill="teal"/></svg>`,
  )}`;

export const faces: readonly string[] = [
  face('M22 56Q18 14 50 16T78 56Q70 32 50 34T22 56z', 46, 'M42 68q8 6 16 0'),
  face('M24 50Q30 18 56 20T76 48Q60 30 24 50z', 44, 'M42 70h16'),
  face('M20 80Q12 10 50 12T80 80L74 40Q50 24 26 40z', 47, 'M43 67q7 7 14 0'),
  face('M26 40Q36 20 50 22T74 40Q50 30 26 40z', 45, 'M42 70q8-4 16 0'),
];
