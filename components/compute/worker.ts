/**
 * The worker: makes cloth up, draws it, lays it, and writes lists and documents, away from the page. It starts when
 * something is asked that the page was not built with, and fetches of the work what is asked.
 */
import { answering } from './answering.ts';
import type { Sent } from './protocol.ts';
import { works } from './works.ts';

const take = answering(works, (news) => postMessage(news));
addEventListener('message', ({ data }: MessageEvent<Sent>) => take(data));
