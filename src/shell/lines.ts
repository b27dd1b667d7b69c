/** Lines of bytes, in constant memory. */

const LINE_FEED = 0x0a;

/**
 * The lines of a stream, as bytes, without their line feeds; those that end in one piece of it together, as it came.
 * Only a line feed ends a line: what else a text may take for one can stand within JSON. Of a longer line just the
 * first `most` bytes are kept.
 */
export async function* splitLines(
  input: AsyncIterable<Uint8Array>,
  most: number,
): AsyncGenerator<Uint8Array[], void, undefined> {
  let line = emptyLine();
  for await (const chunk of input) {
    const lines: Uint8Array[] = [];
    let start = 0;
    for (let end = chunk.indexOf(LINE_FEED); end >= 0; end = chunk.indexOf(LINE_FEED, start)) {
      lines.push(joined(longer(line, chunk.subarray(start, end), most)));
      line = emptyLine();
      start = end + 1;
    }
    line = longer(line, chunk.subarray(start), most);
    if (lines.length > 0) yield lines;
  }
  if (line.size > 0) yield [joined(line)];
}

/** The first `most` bytes of a stream. */
export async function upTo(input: AsyncIterable<Uint8Array>, most: number): Promise<Uint8Array> {
  const line = emptyLine();
  for await (const chunk of input) {
    longer(line, chunk, most);
    if (line.size >= most) break;
  }
  return joined(line);
}

interface Line {
  readonly parts: Uint8Array[];
  size: number;
}

function emptyLine(): Line {
  return { parts: [], size: 0 };
}

function longer(line: Line, bytes: Uint8Array, most: number): Line {
  const part = bytes.subarray(0, most - line.size);
  if (part.length > 0) line.parts.push(part);
  line.size += part.length;
  return line;
}

function joined({ parts }: Line): Uint8Array {
  return parts.length === 1 && parts[0] !== undefined ? parts[0] : Buffer.concat(parts);
}
