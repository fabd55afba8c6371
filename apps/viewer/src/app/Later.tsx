import { type ComponentType, h } from 'preact';
import { useEffect, useState } from 'preact/hooks';

interface LaterProps {
  readonly load: () => Promise<ComponentType>;
  readonly what: string;
}

/** A part that is loaded when it is first shown, so that the first page is small. */
export function Later({ load, what }: LaterProps) {
  const [part, setPart] = useState<{ readonly Part: ComponentType } | null>(null);
  const [fault, setFault] = useState(false);
  useEffect(() => {
    let here = true;
    load().then(
      (Part) => here && setPart({ Part }),
      () => here && setFault(true),
    );
    return () => {
      here = false;
    };
  }, [load]);
  if (fault)
    return (
      <p class="app-wait" role="alert">
        {what} could not be loaded. Check the connection and open the page again.
      </p>
    );
  return part ? h(part.Part, {}) : <p class="app-wait muted">Loading {what.toLowerCase()} …</p>;
}
