/** The job that `runback view` serves: read and saved through it, with news of changes on disk. */

/** The text on disk. `tag` is the same for the same text and for no other. */
export interface ServedCopy {
  readonly text: string;
  readonly name: string;
  readonly tag: string;
}

/** Not written when the disk has another text than the one with the tag given: that one comes back. */
export type ServedWrite =
  | { readonly ok: true; readonly tag: string }
  | { readonly ok: false; readonly text: string; readonly tag: string };

export interface Served {
  /** @throws Error in words for the person, when the file is gone or the server has ended */
  read(): Promise<ServedCopy>;
  /** Replaces the text with `tag`, or a file that is gone. @throws Error in words for the person */
  write(text: string, tag: string): Promise<ServedWrite>;
  /** Calls when the disk has another text than was last read or written here. Returns the function that ends it. */
  watch(onChange: (tag: string) => void): () => void;
}

/** Null on any page that `runback view` did not make for a job. */
export function served(): Served | null {
  const meta = document.querySelector<HTMLMetaElement>('meta[name="runback-served"]');
  return meta?.content === '1' ? makeServed() : null;
}

const address = (name: string): URL => new URL(`served/${name}`, document.baseURI);

/** The answer with one of the states wanted; any other is an error in the words of the server. */
async function ask(init: RequestInit, wanted: readonly number[]): Promise<Response> {
  const response = await fetch(address('job'), { cache: 'no-store', ...init }).catch(() => {
    throw new Error('runback view has ended in the terminal: start it again, or save a copy');
  });
  if (wanted.includes(response.status)) return response;
  throw new Error((await response.text()).trim() || `the server answered ${response.status}`);
}

const tagOf = (response: Response): string => response.headers.get('ETag') ?? '';

function makeServed(): Served {
  /** Tag of the text that this page has, from its last reading or writing. */
  let known: string | null = null;
  let writing = 0;
  let afterWriting: (() => void) | null = null;

  const read = async (): Promise<ServedCopy> => {
    const response = await ask({}, [200]);
    const name = decodeURIComponent(response.headers.get('X-Runback-Name') ?? '');
    const copy = { text: await response.text(), name, tag: tagOf(response) };
    known = copy.tag;
    return copy;
  };

  const put = async (text: string, tag: string): Promise<ServedWrite> => {
    const headers = { 'Content-Type': 'text/plain; charset=utf-8', 'If-Match': tag };
    const response = await ask({ method: 'PUT', headers, body: text }, [204, 412]);
    known = tagOf(response);
    return response.status === 204
      ? { ok: true, tag: known }
      : { ok: false, text: await response.text(), tag: known };
  };

  const write = async (text: string, tag: string): Promise<ServedWrite> => {
    writing += 1;
    try {
      return await put(text, tag);
    } finally {
      writing -= 1;
      if (writing === 0) {
        afterWriting?.();
        afterWriting = null;
      }
    }
  };

  /** News may be of our own writing, or overtaken by it: what counts is the disk now, once nothing is under way. */
  const look = async (onChange: (tag: string) => void): Promise<void> => {
    const had = known;
    const tag = await ask({ method: 'HEAD' }, [200]).then(tagOf, () => had);
    if (writing > 0) afterWriting = () => void look(onChange);
    else if (known !== had) await look(onChange);
    else if (tag !== null && known !== null && tag !== known) onChange(tag);
  };

  const watch = (onChange: (tag: string) => void): (() => void) => {
    const source = new EventSource(address('events'));
    source.addEventListener('change', ({ data }: MessageEvent<string>) => {
      if (data !== known) void look(onChange);
    });
    return () => {
      afterWriting = null;
      source.close();
    };
  };
  return { read, write, watch };
}
