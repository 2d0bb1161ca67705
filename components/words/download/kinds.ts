/** What people call a kind of file, by its ending. */
const KINDS: Readonly<Record<string, readonly string[]>> = {
  PDF: ['pdf'],
  ZIP: ['zip'],
  text: ['txt', 'md', 'rtf', 'doc', 'docx', 'odt', 'pages'],
  table: ['csv', 'xls', 'xlsx', 'ods', 'numbers'],
  picture: ['jpg', 'jpeg', 'png', 'webp', 'avif', 'gif', 'heic', 'tif', 'tiff'],
  sound: ['mp3', 'm4a', 'ogg', 'wav', 'flac'],
  film: ['mp4', 'webm', 'mov', 'm4v'],
  slides: ['ppt', 'pptx', 'odp', 'key'],
  'drawing to cut': ['dxf', 'studio3', 'plt'],
};

/** @example kindOf('plan.pdf') // => 'PDF' */
export function kindOf(name: string): string {
  const ending = /\.([^.]+)$/u.exec(name)?.[1] ?? '';
  const kind = Object.keys(KINDS).find((one) => KINDS[one]!.includes(ending.toLowerCase()));
  return kind ?? (ending === '' ? 'file' : ending.toUpperCase());
}

/**
 * A size as people read it: a thousand bytes are a kB.
 *
 * @example sizeOf(1_250_000) // => '1.3 MB'
 */
export function sizeOf(bytes: number): string {
  if (bytes < 999_500) return `${Math.max(1, Math.round(bytes / 1000))} kB`;
  const [many, unit] = bytes < 999_500_000 ? [bytes / 1e6, 'MB'] : [bytes / 1e9, 'GB'];
  return `${many < 10 ? many.toFixed(1).replace(/\.0$/u, '') : Math.round(many)} ${unit}`;
}
