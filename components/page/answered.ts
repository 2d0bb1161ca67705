/** Name of the event that is dispatched when an answer was judged or a step ticked; the lesson's tape marks its part as done. */
export const ANSWERED = 'course-kit:answered';
