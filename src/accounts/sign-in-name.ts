/** The name by which staff sign in: compared without regard to case and to doubled spaces. */
export const signInNameOf = (name: string): string => name.normalize('NFKC').trim().replace(/\s+/g, ' ').toLowerCase();
