/** The guide is read as it was made: no script is fetched for it. */
export const csr = false;
