// A pack is many files in one: a length, an index of names and sizes, then the files' bytes.

/**
 * The files of a pack, as views into its bytes.
 * @param {Uint8Array} bytes  length of the index (4 bytes, little-endian), index as JSON [[name, size], …], contents
 * @returns {{name: string, bytes: Uint8Array}[]}
 */
export function filesOf(bytes) {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const start = 4 + view.getUint32(0, true);
  const index = JSON.parse(new TextDecoder().decode(bytes.subarray(4, start)));
  let at = start;
  return index.map(([name, size]) => ({name, bytes: bytes.subarray(at, (at += size))}));
}

/**
 * Write a pack's files into Python's file system. The pack's bytes must not be changed afterwards:
 * the file system keeps views of them, which saves a copy.
 * @param {object} FS  Emscripten's file system
 * @param {string} folder  where the names begin
 * @param {Uint8Array} bytes
 */
export function unpack(FS, folder, bytes) {
  const made = new Set();
  for (const {name, bytes: content} of filesOf(bytes)) {
    const path = `${folder}/${name}`;
    const parent = path.slice(0, path.lastIndexOf("/"));
    if (!made.has(parent)) {
      FS.mkdirTree(parent);
      made.add(parent);
    }
    FS.writeFile(path, content, {canOwn: true});
  }
}
