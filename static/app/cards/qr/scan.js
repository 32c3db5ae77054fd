// Reads QR codes where the browser can: from the camera, or from a picture.

const pause = 150; // ms between two looks, so that the phone stays cool

/** Resolves to what reads codes, or to undefined where the browser has nothing for it. */
export async function detector() {
  try {
    const formats = await BarcodeDetector.getSupportedFormats();
    return formats.includes('qr_code') ? new BarcodeDetector({ formats: ['qr_code'] }) : undefined;
  } catch {
    return undefined;
  }
}

/** The texts of the codes in a picture file; rejects when it is none. */
export async function codesIn(picture, reader) {
  const bitmap = await createImageBitmap(picture);
  try {
    return (await reader.detect(bitmap)).map(({ rawValue }) => rawValue);
  } finally {
    bitmap.close();
  }
}

/** The camera at the back, until it is stopped. */
export class Camera {
  /** @type {MediaStream | null} */
  stream = null;
  #stopped = false;

  /** Starts it; rejects when there is none or it is not allowed. */
  async start() {
    const stream = await navigator.mediaDevices.getUserMedia({
      video: { facingMode: 'environment', width: { ideal: 1280 }, height: { ideal: 720 } },
    });
    if (this.#stopped) return release(stream);
    this.stream = stream;
  }

  /** Tells `found` each code that the video shows, until the camera is stopped. */
  async watch(video, reader, found) {
    video.srcObject = this.stream;
    await video.play().catch(() => {}); // it was taken off the page meanwhile
    while (!this.#stopped) {
      const codes = await reader.detect(video).catch(() => []); // no picture yet
      for (const { rawValue } of codes) if (!this.#stopped) found(rawValue);
      await new Promise((resolve) => setTimeout(resolve, pause));
    }
  }

  stop() {
    this.#stopped = true;
    if (this.stream) release(this.stream);
    this.stream = null;
  }
}

function release(stream) {
  for (const track of stream.getTracks()) track.stop();
}
