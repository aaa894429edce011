/** Where the next session is: one tap opens the list, one chooses. Shown only where there is a choice. */
import { t } from '../../core/language.ts';
import { choosable, placesIn } from '../../core/named.ts';
import { settingsOf } from '../../core/settings.ts';
import { useApp, useIntents } from '../app-context.tsx';

export function PlaceSwitch() {
  const library = useApp((state) => state.library);
  const heads = useApp((state) => state.heads);
  const { saveSettings } = useIntents();
  const { place } = settingsOf(library);
  const offered = choosable(
    placesIn(
      library,
      place,
      heads.map(({ started }) => started.body.place),
    ),
    place,
  );
  if (offered.length < 2) return null;
  return (
    <label>
      {t('Where')}{' '}
      <select value={place} onChange={(event) => void saveSettings({ place: event.target.value })}>
        {offered.map(({ id, name }) => (
          <option key={id} value={id}>
            {name}
          </option>
        ))}
      </select>
    </label>
  );
}
