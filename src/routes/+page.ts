/** The page is read, and leads on: it comes without scripts. */
export const csr = false;
