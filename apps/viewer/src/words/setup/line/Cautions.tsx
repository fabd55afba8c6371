/** What to mind, as the catalogue or the job says it. */
export function Cautions({ of, cautions }: { readonly of: string; readonly cautions: readonly string[] }) {
  if (cautions.length === 0) return null;
  return (
    <ul class="setup-cautions" aria-label={`Cautions: ${of}`}>
      {cautions.map((caution) => (
        <li key={caution}>{caution}</li>
      ))}
    </ul>
  );
}
