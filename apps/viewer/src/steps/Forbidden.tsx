import type { WorkedLine } from 'runback';

interface ForbiddenProps {
  readonly findings: WorkedLine['findings'];
  /** All the reasons at once. */
  readonly open: boolean;
}

/** Nobody bends by these steps, and why. Nothing where nothing fails. */
export function Forbidden({ findings, open }: ForbiddenProps) {
  const fails = findings.filter(({ verdict }) => verdict === 'fail');
  const [first, ...more] = fails;
  if (!first) return null;
  return (
    <div class="steps-forbidden" role="alert">
      <strong>✕ DO NOT BEND</strong>
      {open ? (
        <ul>
          {fails.map(({ message }) => (
            <li key={message}>{message}</li>
          ))}
        </ul>
      ) : (
        <p>
          {first.message}
          {more.length > 0 && ` And ${more.length} more.`}
        </p>
      )}
    </div>
  );
}
