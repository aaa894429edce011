/** Says beside a field why an edit was not made; nothing when it was. */
import css from './plan.module.css';

export function Refusal({ text, id }: { text: string; id?: string }) {
  return text === '' ? null : (
    <p role="alert" id={id} className={css.refusal}>
      {text}
    </p>
  );
}
