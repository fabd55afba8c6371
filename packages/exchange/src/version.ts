/** Version of Runback as reports name it; a test holds it equal to that of the package. */
export const VERSION = '0.1.0';
