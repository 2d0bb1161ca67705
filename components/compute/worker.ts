/**
 * The worker: makes cloth up, draws it, lays it, and writes lists and documents, away from the page. It starts when
 * something is asked that the page was not built with, and fetches of the work what is asked.
 */
import { serveRequests } from './serve-requests.ts';
import type { ToWorker } from './protocol.ts';
import { handlers } from './handlers.ts';

const take = serveRequests(handlers, (news) => postMessage(news));
addEventListener('message', ({ data }: MessageEvent<ToWorker>) => take(data));
