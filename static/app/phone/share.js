const patience = 60_000; // ms until a file that was handed out is let go

/**
 * Lets the person save a file.
 *
 * @param {File} file
 */
export function download(file) {
  const url = URL.createObjectURL(file);
  Object.assign(document.createElement('a'), { href: url, download: file.name }).click();
  setTimeout(() => URL.revokeObjectURL(url), patience);
}

/**
 * Reports whether this phone can hand files of such a kind to another app.
 *
 * @param {File} file
 */
export const shareable = (file) => Boolean(navigator.canShare?.({ files: [file] }));

/**
 * Hands a file to another app; resolves to 'shared', 'failed', or undefined when the person thought better of it.
 *
 * @param {File} file
 */
export async function share(file) {
  try {
    await navigator.share({ files: [file] });
    return 'shared';
  } catch (error) {
    return /** @type {Error} */ (error).name === 'AbortError' ? undefined : 'failed';
  }
}
