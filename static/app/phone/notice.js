// Notices of the phone, which its service worker shows.

/** Whether this phone has notices at all. */
export const canNotify = () => 'Notification' in globalThis && 'serviceWorker' in navigator;

/** Whether the person has allowed them. */
export const mayNotify = () => canNotify() && Notification.permission === 'granted';

/** Asks the person, within a tap; resolves to whether notices are allowed. */
export const askToNotify = async () => (await Notification.requestPermission()) === 'granted';

/**
 * Shows a notice; a later one with the same tag takes its place.
 *
 * @param {string} text
 * @param {string} tag
 */
export async function notify(text, tag) {
  const registration = await navigator.serviceWorker.ready;
  await registration.showNotification(text, { tag });
}
