const chunk = 0x6000; // bytes, divisible by three; more would be too many arguments

/** A picture's bytes in base64. */
export async function toBase64(blob) {
  const bytes = new Uint8Array(await blob.arrayBuffer());
  const texts = [];
  for (let at = 0; at < bytes.length; at += chunk)
    texts.push(btoa(String.fromCharCode(...bytes.subarray(at, at + chunk))));
  return texts.join('');
}

/** The picture of a base64 text: always a JPEG, whatever wrote it. Throws when it is none. */
export function fromBase64(text) {
  const letters = atob(text);
  const bytes = new Uint8Array(letters.length);
  for (let at = 0; at < bytes.length; at++) bytes[at] = letters.charCodeAt(at);
  return new Blob([bytes], { type: 'image/jpeg' });
}
