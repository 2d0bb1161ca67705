/** Keeps the screen awake while hands are at the machine, where the browser can do that. */
export class Wake {
  /** Whether this browser can. Known only in the browser, after the page is there. */
  can = $state(false);
  wanted = $state(false);
  #lock: WakeLockSentinel | undefined;

  /** Begins to follow the page; call in an effect. Returns the way to stop. */
  follow(): () => void {
    this.can = 'wakeLock' in navigator;
    // A browser lets the screen go when the page is put aside; asked again when it comes back.
    const again = () => {
      if (document.visibilityState === 'visible') void this.#ask();
    };
    document.addEventListener('visibilitychange', again);
    return () => {
      document.removeEventListener('visibilitychange', again);
      void this.want(false);
    };
  }

  async want(awake: boolean): Promise<void> {
    this.wanted = awake;
    if (awake) return this.#ask();
    await this.#lock?.release();
    this.#lock = undefined;
  }

  async #ask(): Promise<void> {
    if (!this.wanted) return;
    try {
      this.#lock = await navigator.wakeLock.request('screen');
    } catch {
      // Refused, as on a low battery: the tick goes away, so that it never promises what is not so.
      this.wanted = false;
    }
  }
}
