/** The page is read, and has nothing to press: it comes without scripts. */
export const csr = false;
