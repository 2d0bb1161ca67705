/**
 * Lengths as machines and people wrote them in published captions and transcripts, at most six words each, with what is
 * meant. Read as stored excerpts of the pages that the letter names; what is meant is our own reading of the passage.
 */
import { describe, expect, test } from 'vitest';
import { heard } from '../core/speech/spoken.ts';

const sources = {
  V1: 'videodb.org, Understanding quilt rulers (machine captions)',
  V2: 'videodb.org, four-patch from 2 1/2 in strips (machine captions)',
  V3: 'videodb.org, cross-back apron (machine captions)',
  P: 'prophetes.ai, pillowcase (machine captions)',
  D: 'dailymotion, GeoBeats, quilt blocks (machine captions)',
  A: 'amara.org, Make thrift buy 27 (transcript)',
  X: 'donkrax, Expert Village, shoe bag (transcript)',
  E: 'ehow.co.uk, chair cushion (transcript)',
  F: '5min.com, welt cord (transcript)',
  B: 'pbs.org, Lap quilting (captions)',
  Q: 'allpeoplequilt, tote video (transcript)',
  S: 'a class transcript',
  G: 'greencoin, 5 in squares (machine captions)',
  C: 'cainanwiebe, layer cake 10 (machine captions)',
  L: 'docslib, C. Patch, Seam finishing (handout)',
  K: 'kdhnews (report)',
  W: 'videodb.org, SewVeryEasy (transcript)',
};

const rows: [source: keyof typeof sources, said: string, meant: string][] = [
  ['V1', '5/8', '0.625 (in)'],
  ['V1', 'two and three eighths', '2.375 (in)'],
  ['V1', '2 and 5/8', '2.625 (in)'],
  ['V1', 'two and 3/8', '2.375 (in)'],
  ['V1', 'one and a half', '1.5 (in)'],
  ['V1', 'quarter inch line', '0.25 in'],
  ['V1', 'a half inch', '0.5 in'],
  ['V1', '3/4 inch', '0.75 in'],
  ['V1', 'half of one inch', '0.5 in'],
  ['V2', '2 and 1/2 in strips', '2.5 in'],
  ['V2', '2 1/2 in x 21 in', '2.5 x 21 in'],
  ['V2', '1/2 in by 21 1/2', '0.5 x 21.5 in'],
  ['V2', '1 1/2 (cut five strips)', '1.5 (in)'],
  ['V2', 'fat e of fabric', '~9 x 22 (in) ?'],
  ['V3', 'a yard and a foot', '1.3333 yd'],
  ['V3', 'a yarn 15 mins white fabric', '1 yd ?'],
  ['V3', '45 or 44 inch white fabric', '44..45 in'],
  ['V3', '10 to 8 inches', '8..10 in'],
  ['V3', '47 to 45 inches width wise', '45..47 in'],
  ['V3', '37 inches around', '37 in'],
  ['P', 'one on one eight yards', '1.125 yd'],
  ['P', 'one-way eight yards', '1.125 yd'],
  ['P', 'or a meter', '1 m'],
  ['P', 'or a metre', '1 m'],
  ['P', 'nineteen and a half', '19.5 (in)'],
  ['P', 'sole bridges', 'none'],
  ['D', '4 and a half inches', '4.5 in'],
  ['D', '4 and a half inches by', '4.5 in'],
  ['D', 'about 20 inches long', '~20 in'],
  ['A', '40 by 40 inches', '40 x 40 in'],
  ['A', 'approximately 15 inches long', '~15 in'],
  ['A', 'divided this by 6.28', 'none'],
  ['A', 'radius of 4.7 inches', '4.7 in'],
  ['X', '17" long and about 11" wide', '~17 x 11 in'],
  ['X', 'about an inch extra', '~1 in'],
  ['E', '11 by 15', '11 x 15 (in)'],
  ['E', '3 inches plus a 1/2', '3.5 in'],
  ['E', 'Put us a mark at 4', '4 (in)'],
  ['E', '1/2 on each side', '0.5 (in)'],
  ['E', 'a few inches past', '~3 in ?'],
  ['F', '2 1/2 inch white fabric strip', '2.5 in'],
  ['B', '1/4 OF AN INCH', '0.25 in'],
  ['B', '12-INCH BLOCK', '12 in'],
  ['Q', 'quarter inch seam allowance', '0.25 in'],
  ['Q', "15'' by 20 ''", '15 x 20 in'],
  ['Q', "2.75'' x 45''", '2.75 x 45 in'],
  ['Q', '2 ? inches', '2 in ?'],
  ['Q', '15x20 inch rectangles', '15 x 20 in'],
  ['S', '71 inch by 71 inch', '71 x 71 in'],
  ['G', 'five inch squares', '5 x 5 in'],
  ['G', 'count out my five inches', '5 in'],
  ['G', 'fourth February', 'none'],
  ['C', 'about 54 inches', '~54 in'],
  ['L', '1/2-inch double turned', '0.5 in'],
  ['K', '5/8 of an inch', '0.625 in'],
  ['W', '2 1/2" strips', '2.5 in'],
];

describe.each(Object.entries(sources))('%s, %s', (key) => {
  test.each(rows.filter(([source]) => source === key).map(([, said, meant]) => [said, meant]))('%s', (said, meant) => {
    expect(heard(said)).toBe(meant);
  });
});
