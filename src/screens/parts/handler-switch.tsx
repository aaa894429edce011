/** Whose words the ear listens for: one tap opens the list, one chooses. Names come from who was added and who has taught a take. */
import { useState } from 'react';
import { t } from '../../core/language.ts';
import { choosable, handlersIn, namedAs } from '../../core/named.ts';
import { settingsOf } from '../../core/settings.ts';
import { useApp, useIntents } from '../app-context.tsx';

/** No handler is called this: names are trimmed. */
const SOMEBODY_ELSE = ' ';

/** @param mayAdd also offers somebody who has taught nothing yet. Without that it shows only where there is a choice. */
export function HandlerSwitch({ mayAdd = false }: { mayAdd?: boolean }) {
  const library = useApp((state) => state.library);
  const busy = useApp(({ teaching, live }) => teaching.kind !== 'idle' || (live !== null && live.phase.phase !== 'ended'));
  const { saveSettings, saveNamed, newId } = useIntents();
  const [adding, setAdding] = useState(false);
  const { handler } = settingsOf(library);
  const all = handlersIn(library, handler);
  const offered = choosable(all, handler);
  if (offered.length < 2 && !mayAdd) return null;
  const choose = (id: string) => {
    setAdding(id === SOMEBODY_ELSE);
    if (id !== SOMEBODY_ELSE && id !== handler) void saveSettings({ handler: id });
  };
  const add = async (name: string) => {
    const named = namedAs(all, name, newId);
    await saveNamed('handler', named);
    choose(named.id);
  };
  return (
    <div className="row">
      <label>
        {t('Listens for the words of')}{' '}
        <select value={adding ? SOMEBODY_ELSE : handler} disabled={busy} onChange={(event) => choose(event.target.value)}>
          {offered.map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
          {mayAdd ? <option value={SOMEBODY_ELSE}>{t('somebody else…')}</option> : null}
        </select>
      </label>
      {adding ? (
        <form
          className="row"
          onSubmit={(event) => {
            event.preventDefault();
            const name = String(new FormData(event.currentTarget).get('name')).trim().normalize('NFC');
            if (name) void add(name);
          }}
        >
          <label>
            {t('Name')} <input name="name" maxLength={60} required={true} />
          </label>
          <button type="submit">{t('Teach their words')}</button>
        </form>
      ) : null}
    </div>
  );
}
