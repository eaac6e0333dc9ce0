const WIDTH = 100;

/** A sentence broken between words to lines of at most 100 characters. */
export function wrapped(text: string, first: string, then = first): string[] {
  const lines: string[] = [];
  let line = first;
  let empty = true;
  for (const word of text.split(" ")) {
    if (!empty && line.length + 1 + word.length > WIDTH) {
      lines.push(line);
      line = then + word;
    } else line += empty ? word : ` ${word}`;
    empty = false;
  }
  return [...lines, line];
}
