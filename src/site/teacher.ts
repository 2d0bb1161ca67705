/**
 * Whether answer keys and class plans are part of the site. They are left out of a built site, which learners see,
 * unless TEACHER_PAGES=yes asks for them; `npm run handouts` writes them in any case.
 */
export const withTeacher = (environment: NodeJS.ProcessEnv = process.env): boolean =>
  environment.TEACHER_PAGES === 'yes';
