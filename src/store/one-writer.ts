/** Lets one tab at a time write: the first to claim holds the lock for as long as it lives, the second is told. */

export type Locks = Pick<LockManager, 'request'>;

export interface Claim {
  /** The browser's own when left out. */
  readonly locks?: Locks | undefined;
  /** Takes the lock away from another tab, which is told through its `onLost`. */
  readonly takeOver?: boolean;
  /** Gives the lock back when this settles; never, when left out: the browser does so when the tab closes. */
  readonly until?: Promise<unknown>;
}

const NEVER = new Promise<never>(() => {});

/** `onLost`: another tab took over. This one writes nothing from now on. */
export function claimWriter(name: string, onLost: () => void, claim: Claim = {}): Promise<'writer' | 'another-tab'> {
  const { locks = browserLocks(), takeOver = false, until = NEVER } = claim;
  // No locks here: the check of the number in each append still keeps two tabs from mixing.
  if (!locks) return Promise.resolve('writer');
  return new Promise((resolve) => {
    let isWriter = false;
    const hold = async (lock: Lock | null) => {
      isWriter = lock !== null;
      resolve(isWriter ? 'writer' : 'another-tab');
      // However the end came, the lock goes back without complaint.
      if (isWriter) await until.catch(() => {});
    };
    locks.request(name, takeOver ? { steal: true } : { ifAvailable: true }, hold).catch(() => {
      if (isWriter) onLost();
      // Refused before anyone held it: as if there were no locks.
      else resolve('writer');
    });
  });
}

function browserLocks(): Locks | undefined {
  return typeof navigator === 'undefined' ? undefined : navigator.locks;
}
