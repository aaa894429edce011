/** Asks, where lifts gathered at one place of the body, whether it hurts. A question, never a finding. */
import type { Reason } from '../../core/call.ts';
import { t } from '../../core/language.ts';
import type { PlacedCall } from '../../core/placed-calls.ts';
import { sayReason } from '../../core/sentences.ts';
import css from './review.module.css';

type Alarm = Extract<Reason, { kind: 'area-alarm' }>;

export function Cautions({ calls }: { calls: readonly PlacedCall[] }) {
  const alarms = gravest(calls.flatMap(({ call }) => call.reasons).filter((reason) => reason.kind === 'area-alarm'));
  if (alarms.length === 0) return null;
  return (
    <section className={css.caution}>
      <h2>{t('Could something hurt?')}</h2>
      {alarms.map((alarm) => (
        <p key={alarm.area}>
          {sayReason(alarm)} {alarm.level === 'look' ? t('If you cannot tell, ask your veterinarian.') : ''}
        </p>
      ))}
      <p className="soft small">{t('Healthy dogs lift this often, too: it is a reason to ask, not an answer.')}</p>
    </section>
  );
}

/** The last word about each place: the level only rises within a session. */
function gravest(alarms: readonly Alarm[]): readonly Alarm[] {
  return [...new Map(alarms.map((alarm) => [alarm.area, alarm])).values()];
}
