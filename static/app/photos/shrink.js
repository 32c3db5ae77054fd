// Makes of any picture a small JPEG that stands upright. It is painted anew, so
// nothing of the file but what is to be seen gets through: no place, no time, no
// name of the phone.

const longest = 1600; // px: a crack or the teeth of a chip still show (common practice, no source)
const quality = 0.8;

/** The size in which a picture is kept: its longest side at most 1600 px. */
export function fitted({ width, height }) {
  const share = Math.min(1, longest / Math.max(width, height));
  return {
    width: Math.max(1, Math.round(width * share)),
    height: Math.max(1, Math.round(height * share)),
  };
}

/** Resolves to the small picture; rejects when this phone can't read the file. */
export async function shrink(file) {
  const picture = await upright(file);
  const canvas = document.createElement('canvas');
  try {
    Object.assign(canvas, fitted(picture));
    const brush = canvas.getContext('2d', { alpha: false });
    if (!brush) throw new Error('no canvas');
    brush.fillStyle = '#fff';
    brush.fillRect(0, 0, canvas.width, canvas.height);
    brush.imageSmoothingQuality = 'high';
    brush.drawImage(picture, 0, 0, canvas.width, canvas.height);
    return await encoded(canvas);
  } finally {
    picture.close();
    canvas.width = 0; // phones count the memory of canvases, and let go late
  }
}

/**
 * The picture of a file, the way round that the camera was held. Browsers that don't know
 * the option refuse it, and turn the picture by themselves.
 */
const upright = (file) =>
  createImageBitmap(file, { imageOrientation: 'from-image' }).catch(() => createImageBitmap(file));

async function encoded(canvas) {
  const blob = await new Promise((resolve) => canvas.toBlob(resolve, 'image/jpeg', quality));
  if (blob?.type !== 'image/jpeg') throw new Error('no picture');
  const parts = bare(new Uint8Array(await blob.arrayBuffer()));
  return new Blob(parts, { type: 'image/jpeg' });
}

/**
 * The parts of a JPEG without what applications write into it (segments APP1 to
 * APP15 and comments, ITU-T T.81 annex B): browsers differ in what they add.
 */
export function bare(jpeg) {
  const parts = [jpeg.subarray(0, 2)];
  let at = 2;
  while (jpeg.at(at) === 0xff && jpeg[at + 1] !== 0xda && at + 3 < jpeg.length) {
    const end = at + 2 + (jpeg[at + 2] << 8) + jpeg[at + 3];
    const marker = jpeg[at + 1];
    if (!(marker > 0xe0 && marker < 0xf0) && marker !== 0xfe) parts.push(jpeg.subarray(at, end));
    at = end;
  }
  return [...parts, jpeg.subarray(at)];
}
