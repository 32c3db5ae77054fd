// Makes a film of pictures, for a browser's fake camera.
import { writeFile } from 'node:fs/promises';

const [width, height] = [640, 480];
const each = 5; // frames of a picture; ten make a second

/** Writes pictures (PNG) as a film without end, in YUV4MPEG2; `page` unpacks them. */
export async function film(page, pictures, path) {
  const parts = [Buffer.from(`YUV4MPEG2 W${width} H${height} F10:1 Ip A1:1 C420jpeg\n`)];
  const colourless = Buffer.alloc((width * height) / 2, 128);
  for (const picture of pictures) {
    const grey = Buffer.from(
      await page.evaluate(greyOf, picture.toString('base64'), width, height),
      'base64',
    );
    for (let n = 0; n < each; n++) parts.push(Buffer.from('FRAME\n'), grey, colourless);
  }
  await writeFile(path, Buffer.concat(parts));
}

/** Runs in the page: the brightness of each dot, the picture in the middle. */
async function greyOf(base64, w, h) {
  const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
  const bitmap = await createImageBitmap(new Blob([bytes], { type: 'image/png' }));
  const context = new OffscreenCanvas(w, h).getContext('2d');
  context.fillStyle = '#998';
  context.fillRect(0, 0, w, h);
  const size = Math.min(w, h) - 20;
  context.drawImage(bitmap, (w - size) / 2, (h - size) / 2, size, size);
  const { data } = context.getImageData(0, 0, w, h);
  let text = '';
  for (let at = 0; at < data.length; at += 4) text += String.fromCharCode(data[at]);
  return btoa(text);
}
