/** The words of a course: its terms, the verbs, and what its pieces and materials are called. */
import { verbNames } from '../steps/index.ts';
import type { Pattern } from '../project/index.ts';

export type CourseWords = {
  /** Terms of the trade, the verbs among them. */
  terms: readonly string[];
  /** What each piece, result of a step, material and measure is called: its name first, then its label. */
  names: Readonly<Record<string, readonly string[]>>;
};

/** Terms that are said at every table, whatever a glossary holds. Common practice, no source. */
const common = (
  'seam,seam allowance,raw edge,raw edges,right side,right sides,right sides together,wrong side,wrong sides,selvage,selvedge,grain,' +
  'interfacing,fusible,lining,facing,hem,mitre,pleat,dart,tuck,gather,baste,basting,topstitch,topstitching,edgestitch,understitch,' +
  'backstitch,straight stitch,zigzag,overlock,bias binding,bias tape,binding,piping,gusset,notch,notches,bobbin,presser foot,' +
  'zipper,zipper foot,zip,rotary cutter,cutting mat,seam ripper,thread,tailor tack,finger press,press cloth,stitch length,' +
  'turning gap,fold line,quilting cotton,batting,wadding,fat quarter,fat eighth,magnetic snap,point turner,clip the corners,cotton,' +
  'linen,canvas,fabric,sewing machine,iron,ruler,scissors,needle,pins,clips,eighth,eighths,sixteenth,inches,inch,wide,centimetres,millimetres'
).split(',');

/**
 * The words of a project and its course.
 *
 * @param glossary The terms of the course's glossary.
 */
export function courseWords(pattern: Pattern, glossary: Iterable<string> = []): CourseWords {
  const names: Record<string, string[]> = {};
  const add = (name: string, ...called: readonly string[]): void => {
    names[name] = [...new Set([...(names[name] ?? []), name, ...called])];
  };
  for (const { name, label } of Object.values(pattern.pieces)) add(name, label);
  for (const { role, label, material } of Object.values(pattern.materials))
    add(role, label, ...(material ? [material.label] : []));
  for (const { name, label, source } of Object.values(pattern.measures))
    if (source === 'stated' || source === 'derived') add(name, label);
  for (const step of pattern.origin.file.steps ?? []) {
    const { makes } = step as { makes?: unknown };
    if (typeof makes === 'string') add(makes);
  }
  return { terms: [...new Set([...glossary, ...verbNames, ...common])], names };
}
