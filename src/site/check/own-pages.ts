/**
 * The pages that the site itself makes beside the lessons of every course, by the last part of their address, and what
 * each shows. A lesson of the same name would have no address of its own.
 */
export const ownPages: Readonly<Record<string, string>> = {
  class: 'what a class handed in',
  index: 'the list of lessons',
  progress: 'how far a learner came',
  shopping: 'the shopping list',
};
