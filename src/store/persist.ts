/** Asks the browser not to clear what is kept, and how much room there is. Answers are values: not every browser tells. */

/** `kept`: not cleared without the person's doing · `may-be-cleared`: when room is short or after weeks unused · `not-told`. */
export type Persistence = 'kept' | 'may-be-cleared' | 'not-told';

export interface Room {
  readonly usedBytes: number;
  readonly quotaBytes: number;
}

type Storage = Partial<Pick<StorageManager, 'persist' | 'persisted' | 'estimate'>>;

/** May show a question to the person: ask after the first saved session, not at the start. */
export async function askToPersist(storage: Storage | undefined = browserStorage()): Promise<Persistence> {
  return answered(() => storage?.persist?.());
}

export async function persistence(storage: Storage | undefined = browserStorage()): Promise<Persistence> {
  return answered(() => storage?.persisted?.());
}

/** null: this browser does not tell. An estimate: browsers round it on purpose. */
export async function roomLeft(storage: Storage | undefined = browserStorage()): Promise<Room | null> {
  try {
    const { usage, quota } = (await storage?.estimate?.()) ?? {};
    return usage === undefined || quota === undefined ? null : { usedBytes: usage, quotaBytes: quota };
  } catch {
    return null;
  }
}

async function answered(ask: () => Promise<boolean> | undefined): Promise<Persistence> {
  try {
    const yes = await ask();
    if (yes === undefined) return 'not-told';
    return yes ? 'kept' : 'may-be-cleared';
  } catch {
    return 'not-told';
  }
}

function browserStorage(): Storage | undefined {
  return typeof navigator === 'undefined' ? undefined : navigator.storage;
}
