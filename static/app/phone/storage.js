/** Asks the browser to keep the records; resolves to its answer, null where it can't be asked. */
export async function askToPersist() {
  try {
    return (await navigator.storage?.persist?.()) ?? null;
  } catch {
    return null;
  }
}

/** Whether the browser has promised to keep the records; null when it doesn't say. */
export async function recordsPersist() {
  try {
    return (await navigator.storage?.persisted?.()) ?? null;
  } catch {
    return null;
  }
}

/** What the browser believes the app takes and may take, {usage, quota} in bytes; {} when it won't say. */
export async function roomLeft() {
  return (await navigator.storage?.estimate?.().catch(() => undefined)) ?? {};
}
