/** Says what stands in the way of sync, what happened, and what to do. */
import { t } from '../../core/language.ts';
import type { Refused, SyncRefusal, Unlike } from '../../session/app-state.ts';

export function sayRefusal(refusal: SyncRefusal): string {
  switch (refusal.kind) {
    case 'no-answer':
      return t('The server does not answer. A dog that was added is tried again by itself: practise meanwhile.');
    case 'busy':
      return t('The server cannot right now ({status}). Try again later.', { status: refusal.status });
    case 'sign-in':
      return t('The server does not know this name with this password.');
    case 'not-allowed':
      return t('The server does not let you into this database: ask whoever runs it.');
    case 'no-database':
      return t('There is no such database on the server: whoever runs it makes it.');
    case 'no-server':
      return t('There is no CouchDB at this path ({status}): ask whoever hosts this page.', { status: refusal.status });
    case 'wrong-passphrase':
      return t('This is not the passphrase of this dog. Nothing was read or written.');
    case 'unknown-form':
      return t('A newer Stillbeat began this database, or something else did: load the newest version here.');
    case 'empty':
      return t('There is no dog in this database yet: add it first on the device that has the dog.');
    case 'another-dog':
      return t('This database holds another dog.');
    case 'device':
      return t('This device could not read or write what it keeps ({cause}).', { cause: refusal.cause });
    case 'foreign':
      return t('This page may talk to its own address alone: give a path of it, such as “sync”.');
    case 'bad-name':
      return t('Databases are named in small letters, digits, “-” and “_”, and begin with a letter.');
    case 'short':
      return t('That passphrase is too short: at least 12 characters.');
    case 'known':
      return t('This dog, or this database, is kept in step already.');
    case 'session':
      return t('A session is running: finish it first.');
  }
}

export function sayUnlike({ id, path, here, there }: Unlike): string {
  const where = [t('event {id}', { id }), ...(path ? [path] : [])].join(' › ');
  return t('{where}: here {here}, on the server {there}. Both are left as they are.', { where, here, there });
}

export function sayRefused({ id, why, what = '' }: Refused): string {
  const where = t('event {id}', { id });
  switch (why) {
    case 'sealed-otherwise':
      return t('{where}: sealed with another passphrase, or changed on the server', { where });
    case 'other-dog':
      return t('{where}: it is not of this dog', { where });
    case 'damaged':
      return `${where}: ${what}`;
  }
}
