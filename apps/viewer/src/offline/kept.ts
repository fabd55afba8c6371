/** Which files one version of the viewer keeps, and which of them answers a request. */

export interface Kept {
  /** Address of the folder the site lies in, with its last slash. */
  readonly scope: string;
  /** Changes with the content of any file. */
  readonly version: string;
  /** Paths below the scope. */
  readonly files: readonly string[];
}

/** Sent to a waiting worker: the person wants its version now. */
export const TAKE_OVER = 'take-over';

export const PAGE = 'index.html';

const prefix = (scope: string): string => `runback ${scope} `;

export const storeName = ({ scope, version }: Kept): string => prefix(scope) + version;

/** True for what another version of the same site kept; another site of the same server is left alone. */
export const isOld = (kept: Kept, name: string): boolean =>
  name.startsWith(prefix(kept.scope)) && name !== storeName(kept);

export const addressOf = ({ scope }: Kept, file: string): string => new URL(file, scope).href;

/** Address under which the kept answer to a request lies, or `null` when the network has to answer. */
export function keptFor(kept: Kept, { method, url }: Pick<Request, 'method' | 'url'>): string | null {
  if (method !== 'GET' || !url.startsWith(kept.scope)) return null;
  const path = url.slice(kept.scope.length).replace(/[?#].*$/s, '') || PAGE;
  return kept.files.includes(path) ? addressOf(kept, path) : null;
}
