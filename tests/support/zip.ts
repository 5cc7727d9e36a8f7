import { crc32, deflateRawSync } from 'node:zlib';

/** ZIP archives as tests need them: honest ones, and ones that lie (APPNOTE.TXT 6.3, sections 4.3 to 4.5, 2022). */
export interface ZipEntry {
  name: string;
  content: string | Buffer;
  /** Unix mode in the upper half, such as that of a link. */
  attributes?: number;
  /** The size that is claimed, where it is another than the real one. */
  claims?: number;
  /** The flags of the entry; bit 0 says that it is encrypted. */
  flags?: number;
  /** The check sum, where it is another than the right one. */
  sum?: number;
}

export function zip(entries: readonly ZipEntry[]): Buffer {
  const locals: Buffer[] = [];
  const centrals: Buffer[] = [];
  let offset = 0;
  for (const entry of entries) {
    const name = Buffer.from(entry.name);
    const content = Buffer.from(entry.content as string);
    const packed = deflateRawSync(content);
    const common = Buffer.alloc(26);
    common.writeUInt16LE(20, 0);
    common.writeUInt16LE((entry.flags ?? 0) | 0x800, 2);
    common.writeUInt16LE(8, 4);
    common.writeUInt32LE(entry.sum ?? crc32(content), 10);
    common.writeUInt32LE(packed.length, 14);
    common.writeUInt32LE(entry.claims ?? content.length, 18);
    common.writeUInt16LE(name.length, 22);
    const local = Buffer.concat([Buffer.from('PK\x03\x04', 'latin1'), common, name, packed]);
    const tail = Buffer.alloc(14);
    tail.writeUInt32LE(entry.attributes ?? 0, 6);
    tail.writeUInt32LE(offset, 10);
    centrals.push(Buffer.concat([Buffer.from('PK\x01\x02\x14\x03', 'latin1'), common, tail, name]));
    locals.push(local);
    offset += local.length;
  }
  const directory = Buffer.concat(centrals);
  const end = Buffer.alloc(22);
  end.write('PK\x05\x06', 'latin1');
  end.writeUInt16LE(entries.length, 8);
  end.writeUInt16LE(entries.length, 10);
  end.writeUInt32LE(directory.length, 12);
  end.writeUInt32LE(offset, 16);
  return Buffer.concat([...locals, directory, end]);
}
