// Sizes of labels in mm: of rolls and sheets that are sold for label printers, by common
// practice, no source; and one to cut out of plain paper, as large as a bank card
// (ISO/IEC 7810 ID-1, 85.60 by 53.98 mm, from memory). label.css gives each its letters,
// and the paper its size.

/** @type {Map<string, { wide: number, high: number, plain?: boolean }>} */
export const sizes = new Map([
  ['62x29', { wide: 62, high: 29 }],
  ['57x32', { wide: 57, high: 32 }],
  ['54x25', { wide: 54, high: 25 }],
  ['50x30', { wide: 50, high: 30 }],
  ['70x37', { wide: 70, high: 37 }],
  ['100x50', { wide: 100, high: 50 }],
  ['plain', { wide: 85, high: 54, plain: true }],
]);
