/** Where the sounds lie: real files, never data: addresses, which the page's policy forbids. */
import beat from '../../sounds/beat.wav?url&no-inline';
import enough from '../../sounds/enough.wav?url&no-inline';
import lost from '../../sounds/lost.wav?url&no-inline';
import raise from '../../sounds/raise.wav?url&no-inline';
import rest from '../../sounds/rest.wav?url&no-inline';
import back from '../../sounds/return.wav?url&no-inline';
import split from '../../sounds/split.wav?url&no-inline';
import unsure from '../../sounds/unsure.wav?url&no-inline';
import type { SoundName } from './names.ts';

export const SOUND_URLS: Readonly<Record<SoundName, string>> = {
  beat,
  enough,
  raise,
  return: back,
  split,
  rest,
  lost,
  unsure,
};
