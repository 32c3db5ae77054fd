// Sizes of labels in mm: of rolls and sheets that are sold for label printers, by common
// practice, no source; and one to cut out of plain paper, as large as a bank card
// (ISO/IEC 7810 ID-1, 85.60 by 53.98 mm, from memory), which fits in a pocket and a wallet.

/** @type {Map<string, { wide: number, high: number, letters: number, plain?: boolean }>} */
export const sizes = new Map([
  ['62x29', { wide: 62, high: 29, letters: 7 }],
  ['57x32', { wide: 57, high: 32, letters: 7 }],
  ['54x25', { wide: 54, high: 25, letters: 6 }],
  ['50x30', { wide: 50, high: 30, letters: 6.5 }],
  ['70x37', { wide: 70, high: 37, letters: 8 }],
  ['100x50', { wide: 100, high: 50, letters: 11 }],
  ['plain', { wide: 85, high: 54, letters: 10, plain: true }],
]);
