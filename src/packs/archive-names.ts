/** Names of files in an archive, as every computer that a pack may be unpacked on takes them. */

const longest = 100;

/** Signs that Windows refuses, and whatever cannot be seen. */
const strange = /[\p{C}<>:"|?*\\]/u;
const reserved = /^(?:con|prn|aux|nul|com\d|lpt\d)(?:\.|$)/i;

/** What is wrong with a name, folders included; null when it fits. */
export function nameFault(name: string): string | null {
  if (name.length > longest) return `The name has over ${longest} letters, folders included. Shorten it.`;
  if (strange.test(name)) return 'The name holds a sign that not every computer takes. Use letters, digits, hyphens and points.';
  const parts = name.split('/');
  if (parts.some((part) => part === '' || /[. ]$/.test(part))) return 'A name may not end in a point or a space, nor be empty. Rename it.';
  return parts.some((part) => reserved.test(part)) ? 'Windows keeps this name for itself. Rename the file.' : null;
}

/** What two names share that mean one file on some computers. */
export const sameFile = (name: string): string => name.normalize('NFC').toLowerCase();
