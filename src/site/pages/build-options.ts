/** What of the documents a built site carries; `npm run handouts` writes all of them in any case. */

/** Answer keys and class plans: left out, since learners see the site, unless TEACHER_PAGES=yes asks for them. */
export const withTeacher = (environment: NodeJS.ProcessEnv = process.env): boolean =>
  environment.TEACHER_PAGES === 'yes';

/** The documents of courses: HANDOUTS=no leaves them out, and a build is quicker. Learners still make their own. */
export const withHandouts = (environment: NodeJS.ProcessEnv = process.env): boolean => environment.HANDOUTS !== 'no';
