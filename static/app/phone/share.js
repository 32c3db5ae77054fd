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
export const share = (file) => handOver({ files: [file] });

/** Reports whether this phone can hand a text to another app. */
export const textShareable = () => Boolean(navigator.canShare?.({ text: '.' }));

/**
 * Hands a text to another app; resolves as `share` does.
 *
 * @param {string} text
 */
export const shareText = (text) => handOver({ text });

/** Reports whether this browser can copy a text. */
export const copyable = () => Boolean(navigator.clipboard);

/**
 * Copies a text, for the person to put in elsewhere; tells whether that went well.
 *
 * @param {string} text
 */
export const copyText = (text) =>
  navigator.clipboard.writeText(text).then(
    () => true,
    () => false,
  );

/** Reports whether this browser lets a page ask for what was copied. */
export const pasteable = () => Boolean(navigator.clipboard?.readText);

/** Resolves to the text that was copied, '' where it is none, such as a picture; to undefined where the person or the browser refuses it. */
export const pasteText = () =>
  navigator.clipboard.readText().catch(({ name }) => (name === 'NotFoundError' ? '' : undefined));

/** @param {ShareData} what */
async function handOver(what) {
  try {
    await navigator.share(what);
    return 'shared';
  } catch (error) {
    return /** @type {Error} */ (error).name === 'AbortError' ? undefined : 'failed';
  }
}
