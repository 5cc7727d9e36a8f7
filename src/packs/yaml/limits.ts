/** What a pack may cost. Checked before or while reading, so that no pack takes more than a known amount of time and memory. */
export const folderLimits = {
  /** Files and folders of any kind, names that begin with a point left aside. */
  entries: 500,
  /** Folders inside one another, below the pack's own. */
  depth: 3,
  bytesPerFile: 2_000_000,
  bytesTogether: 20_000_000,
} as const;

/** Of one pack, over all its files. */
export const entryLimits = {
  topics: 60,
  objectives: 400,
  cautions: 60,
  sources: 400,
  questions: 2_000,
  families: 200,
  drawings: 100,
  blueprints: 20,
  skills: 60,
} as const;

export const yamlLimits = {
  /** Lists and mappings inside one another. The parser itself can end the process at about 1,000. */
  depth: 20,
  keysPerMapping: 200,
  entriesPerList: 5_000,
  lettersPerText: 10_000,
  /** Signs, words, spaces and line ends of one file; ordinary YAML has one for every five or six letters. */
  pieces: 300_000,
  /** Of all the files of one pack. Two thousand questions and two hundred families have about 520,000. */
  piecesTogether: 600_000,
  /** Signs without a word between them; ordinary YAML has under ten. */
  signsInARow: 100,
  /** Faults of shape worked out of one file: only 200 are shown of the whole pack. */
  shapeFaults: 400,
  /** Faults of writing told of one file; after that the rest is mostly echo. */
  faults: 20,
} as const;
