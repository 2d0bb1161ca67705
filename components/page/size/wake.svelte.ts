/** Keeps the screen on while somebody sews, where the browser can do that. */
export class Wake {
  /** Whether this browser can. Known only in the browser, after the page is there. */
  can = $state(false);
  wanted = $state(false);
  #lock: WakeLockSentinel | undefined;

  /** Begins to follow the page; call in an effect. Returns the way to stop. */
  follow(): () => void {
    this.can = 'wakeLock' in navigator;
    // The browser releases the lock when the page is hidden; it is requested again when the page is back.
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
