/** What the worker can work out, by kind of request. Each part is fetched when it is asked for the first time. */
import type { Handlers } from './serve-requests.ts';

const making = () => import('./making.ts');
const cloth = () => import('./cloth.ts');

export const handlers: Handlers = {
  steps: async () => (await making()).steps,
  making: async () => (await making()).allOfIt,
  'layer counts': async () => (await making()).layerCounts,
  'layers said': async () => (await making()).layersInProse,
  places: async () => (await making()).places,
  pointing: async () => (await making()).pointing,
  drawing: async () => (await making()).drawing,
  layout: async () => (await cloth()).layout,
  list: async () => (await cloth()).list,
  class: async () => (await cloth()).forOneClass,
  document: async () => (await import('./document.ts')).document,
};
