/**
 * Where the attributes of an opening tag stand. The parser keeps no places of them, so the tag is walked once more.
 *
 * @param source the whole lesson
 * @param from offset right after the tag's name
 * @returns for each attribute in order the offset of its name, and of the first character of its value
 * @example
 * attributePlaces('<Size of="seam" />', 5) // => [{ at: 6, textAt: 10 }]
 */
export function attributePlaces(source: string, from: number): { at: number; textAt: number }[] {
  const places: { at: number; textAt: number }[] = [];
  let at = from;
  while (at < source.length) {
    const sign = source[at]!;
    if (sign === '>' || source.startsWith('/>', at)) break;
    if (sign === '{') {
      places.push({ at, textAt: at + 1 });
      at = pastBraces(source, at);
    } else if (/[\p{L}_$]/u.test(sign)) {
      const name = /[^\s=/>{]+/uy;
      name.lastIndex = at;
      const equals = /\s*=\s*/y;
      equals.lastIndex = at + name.exec(source)![0].length;
      const sign = equals.exec(source);
      const value = sign ? equals.lastIndex : -1;
      if (value < 0) {
        places.push({ at, textAt: at });
        at = name.lastIndex;
      } else {
        const inBraces = source[value] === '{';
        const quote = inBraces ? /\{\s*["']?/y : /["']/y;
        quote.lastIndex = value;
        places.push({ at, textAt: value + (quote.exec(source)?.[0].length ?? 0) });
        at = inBraces ? pastBraces(source, value) : source.indexOf(source[value]!, value + 1) + 1;
      }
    } else at += 1;
  }
  return places;
}

function pastBraces(source: string, open: number): number {
  let depth = 0;
  let quote = '';
  for (let at = open; at < source.length; at += 1) {
    const sign = source[at]!;
    if (quote) {
      if (sign === '\\') at += 1;
      else if (sign === quote) quote = '';
    } else if (sign === '"' || sign === "'" || sign === '`') quote = sign;
    else if (sign === '{') depth += 1;
    else if (sign === '}' && --depth === 0) return at + 1;
  }
  return source.length;
}
