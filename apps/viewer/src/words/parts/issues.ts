import type { JobIssue } from 'runback';

/** Why an edit was refused, for the field it was made in: what is wrong and, unless that says so, what was expected. */
export const sayIssues = (issues: readonly JobIssue[]): string =>
  issues
    .map(({ message, expected }) =>
      message.includes(expected) ? message : `${message} (expected ${expected})`,
    )
    .join('; ');
