/** Asks the phone to keep the records; resolves to its answer. */
export async function persistRecords() {
  return (await navigator.storage?.persist?.().catch(() => false)) ?? false;
}

/** Whether the phone has promised to keep the records. */
export async function recordsPersist() {
  return (await navigator.storage?.persisted?.().catch(() => false)) ?? false;
}

/** What the browser believes the app takes and may take, {usage, quota} in bytes; {} when it won't say. */
export async function roomLeft() {
  return (await navigator.storage?.estimate?.().catch(() => undefined)) ?? {};
}
