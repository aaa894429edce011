/** What is worth knowing of a dog before it is touched, each in a field of its own; used when it is added and when it is changed. */
import type { Dog } from '../../core/event.ts';
import { t } from '../../core/language.ts';

const FIELDS = [
  ['pain', 'Pain, or a place that is sore'],
  ['advice', 'Your veterinarian’s advice'],
  ['food', 'Food: what it likes, what it must not have'],
  ['scares', 'What scares it'],
] as const;

/** For the card that goes to whoever examines the dog. */
const CARD_FIELDS = [
  ['signs', 'Signs that something is too much for it'],
  ['callWhom', 'Whom to call: a name and a number'],
] as const;

export function CareFields({ dog }: { dog?: Dog }) {
  return <Texts fields={FIELDS} dog={dog} />;
}

export function CardFields({ dog }: { dog?: Dog }) {
  return <Texts fields={CARD_FIELDS} dog={dog} />;
}

function Texts({ fields, dog }: { fields: typeof FIELDS | typeof CARD_FIELDS; dog: Dog | undefined }) {
  return fields.map(([name, title]) => (
    <label key={name}>
      {t(title)}
      <textarea name={name} rows={2} maxLength={2000} defaultValue={dog?.[name] ?? ''} />
    </label>
  ));
}

/** Only what was filled in: an empty field is no note. */
export function readCare(form: FormData): Partial<Pick<Dog, (typeof FIELDS | typeof CARD_FIELDS)[number][0]>> {
  const written = [...FIELDS, ...CARD_FIELDS].map(([name]) => [name, String(form.get(name) ?? '').trim()] as const);
  return Object.fromEntries(written.filter(([, text]) => text !== ''));
}
