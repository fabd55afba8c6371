/** One of a few. */
interface SegProps<T extends string> {
  readonly label: string;
  readonly value: T;
  readonly choices: readonly (readonly [T, string])[];
  readonly onChoose: (value: T) => void;
}

export function Seg<T extends string>({ label, value, choices, onChoose }: SegProps<T>) {
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset cannot be laid out as a row of joined buttons everywhere
    <div class="seg look-seg" role="group" aria-label={label}>
      {choices.map(([id, words]) => (
        <button key={id} type="button" aria-pressed={id === value} onClick={() => onChoose(id)}>
          {words}
        </button>
      ))}
    </div>
  );
}
