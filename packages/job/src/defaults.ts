/** Ids that are always there, whatever the catalogue holds. */
export const PLAIN_FITTING = 'plain';
export const GENERAL_SERVICE = 'general';
