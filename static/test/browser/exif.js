// JPEGs with what cameras write into them, and what is in a JPEG.

const text = (letters) => [...Buffer.from(letters, 'latin1')];
const short = (n) => [n >> 8, n & 255];
const long = (n) => [...short(n >>> 16), ...short(n & 0xffff)];

/** An entry of an EXIF directory (TIFF 6.0, big-endian). */
const entry = (tag, type, count, value) => [
  ...short(tag),
  ...short(type),
  ...long(count),
  ...value,
];

/** An APP1 segment: orientation 6 (turn right), the phone's make, and a place on the globe. */
function exif() {
  const make = text('Plainphone\0');
  const at = { make: 8 + 2 + 3 * 12 + 4, gps: 0, latitude: 0 };
  at.gps = at.make + make.length + 1;
  at.latitude = at.gps + 2 + 2 * 12 + 4;
  const degrees = [48, 1, 51, 1, 24, 1].flatMap(long);
  const tiff = [
    ...text('MM'),
    ...short(42),
    ...long(8),
    ...short(3),
    ...entry(0x010f, 2, make.length, long(at.make)),
    ...entry(0x0112, 3, 1, [...short(6), 0, 0]),
    ...entry(0x8825, 4, 1, long(at.gps)),
    ...long(0),
    ...make,
    0,
    ...short(2),
    ...entry(1, 2, 2, text('N\0\0\0')),
    ...entry(2, 5, 3, long(at.latitude)),
    ...long(0),
    ...degrees,
  ];
  const body = [...text('Exif\0\0'), ...tiff];
  return [0xff, 0xe1, ...short(body.length + 2), ...body];
}

/** The same JPEG as a phone's camera writes it: with EXIF. */
export const withExif = (jpeg) =>
  Buffer.concat([jpeg.subarray(0, 2), Buffer.from(exif()), jpeg.subarray(2)]);

/** The marker of each segment before the picture itself, as 'e1' for EXIF. */
export function segments(jpeg) {
  const found = [];
  for (let at = 2; jpeg[at] === 0xff && jpeg[at + 1] !== 0xda; at += 2 + jpeg.readUInt16BE(at + 2))
    found.push(jpeg[at + 1].toString(16));
  return found;
}

/** Draws a JPEG in the page, its left half red and its right half blue. */
export async function halves(page, width, height) {
  const base64 = await page.evaluate(
    async (w, h) => {
      const canvas = Object.assign(document.createElement('canvas'), { width: w, height: h });
      const brush = canvas.getContext('2d');
      brush.fillStyle = '#f00';
      brush.fillRect(0, 0, w / 2, h);
      brush.fillStyle = '#00f';
      brush.fillRect(w / 2, 0, w / 2, h);
      return canvas.toDataURL('image/jpeg', 0.95).split(',')[1];
    },
    width,
    height,
  );
  return Buffer.from(base64, 'base64');
}
