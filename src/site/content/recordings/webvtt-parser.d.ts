/** The package brings no types of its own; this is the part that the kit uses. */
declare module 'webvtt-parser' {
  export class WebVTTParser {
    /** `line` and `col` count from 1; `col` is missing where a whole line is meant. Times in seconds. */
    parse(
      text: string,
      kind?: string,
    ): {
      cues: { id: string; startTime: number; endTime: number; text: string }[];
      errors: { message: string; line: number; col?: number }[];
    };
  }
}
