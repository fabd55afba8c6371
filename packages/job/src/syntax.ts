/** Syntax: how deep the brackets go, and what is wrong in words. */
import { createScanner, type ParseError, printParseErrorCode } from 'jsonc-parser';
import { quote } from './issue.ts';

/** Brackets deeper than this are not read. A job needs six. */
export const DEEPEST = 32;
const LONGEST_GOT = 20;

/** How far the text can be read before its brackets get out of hand, and whether that is because they are too deep. */
export interface Brackets {
  readonly end: number;
  readonly tooDeep: boolean;
}

/**
 * Looks at the brackets before anything recurses. A bracket that closes another kind ends the reading behind it: a
 * reader that forgives it would go on one level too deep.
 */
export function bracketsOf(text: string): Brackets {
  const scanner = createScanner(text, true);
  const open: string[] = [];
  for (let offset = -1; ; ) {
    scanner.scan();
    if (scanner.getTokenOffset() === offset || scanner.getTokenLength() === 0) break;
    offset = scanner.getTokenOffset();
    const char = text[offset];
    if (char === '{' || char === '[') open.push(char);
    if (open.length > DEEPEST) return { end: offset, tooDeep: true };
    if ((char === '}' || char === ']') && open.pop() !== OPENING[char])
      return { end: offset + 1, tooDeep: false };
  }
  return { end: text.length, tooDeep: false };
}

const OPENING = { '}': '{', ']': '[' } as const;

const WORDS: Readonly<Record<string, readonly [string, string]>> = {
  InvalidSymbol: [
    'this is neither a number nor a text in double quotes',
    'a value, or a text in double quotes',
  ],
  InvalidNumberFormat: ['this number is not written right', 'a number like 82.5'],
  PropertyNameExpected: ['a key in double quotes belongs here', 'a key in double quotes'],
  ValueExpected: ['a value is missing here', 'a value'],
  ColonExpected: ['a colon is missing between key and value', 'a colon'],
  CommaExpected: ['a comma is missing before this', 'a comma'],
  CloseBraceExpected: ['a closing } is missing', 'a closing }'],
  CloseBracketExpected: ['a closing ] is missing', 'a closing ]'],
  EndOfFileExpected: ['there is something after the end of the job', 'the end of the file'],
  UnexpectedEndOfComment: ['a comment begun with /* is not closed', 'a closing */'],
  UnexpectedEndOfString: ['a text is not closed on its own line', 'a closing double quote'],
  UnexpectedEndOfNumber: ['this number breaks off', 'a number like 82.5'],
  InvalidUnicode: ['a \\u in a text needs four hex digits behind it', 'four hex digits'],
  InvalidEscapeCharacter: [
    'a backslash in a text is followed by the wrong letter',
    'a double quote, a backslash or n',
  ],
  InvalidCharacter: ['a text holds an invisible character', 'letters, digits and signs'],
};

export function syntaxWords(error: ParseError, text: string): readonly [string, string, string] {
  const words = WORDS[printParseErrorCode(error.error)] ?? ['this cannot be read', 'a job'];
  const found = text.slice(error.offset, error.offset + Math.min(Math.max(error.length, 1), LONGEST_GOT));
  return [words[0], words[1], found.trim() === '' ? 'nothing' : quote(found)];
}
