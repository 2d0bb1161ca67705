/** Whether a part of the page is looked at, or soon will be: drawings out of sight wait. On paper all is in sight. */
import type { Attachment } from 'svelte/attachments';
import { flushSync } from 'svelte';

export class InView {
  is = $state(false);
  /** A page goes to the printer as it is now: what is drawn later does not come along. */
  isPrinting = $state(false);

  /** `{@attach inView.watch}` */
  readonly watch: Attachment<HTMLElement> = (element) => {
    const observer = new IntersectionObserver((entries) => (this.is = entries.at(-1)?.isIntersecting ?? false), {
      rootMargin: '20% 0%',
    });
    observer.observe(element);
    const show = () => flushSync(() => (this.is = this.isPrinting = true));
    const go = () => (this.isPrinting = false);
    addEventListener('beforeprint', show);
    addEventListener('afterprint', go);
    return () => {
      observer.disconnect();
      removeEventListener('beforeprint', show);
      removeEventListener('afterprint', go);
    };
  };
}
