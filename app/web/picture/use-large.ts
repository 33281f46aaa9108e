/** The large picture: alone in the window, on a screen that stays awake, until Escape. */
import { type RefObject, useEffect } from 'react';
import { useSession } from '../session/context.ts';
import { useStore } from '../session/store.ts';

export function useLarge(pane: RefObject<HTMLElement | null>): void {
  const session = useSession();
  const large = useStore(session.desk.large);
  useEffect(() => {
    if (!large || pane.current === null) return;
    const shrink = () => session.desk.large.set(false);
    const undo = [setAlone(pane.current), stayAwake(), fillScreen(shrink), onEscape(shrink)];
    return () => {
      for (const step of undo) step();
    };
  }, [session, pane, large]);
}

/** Everything beside the element, and beside what holds it, is out of reach meanwhile. */
function setAlone(element: HTMLElement): () => void {
  const aside: HTMLElement[] = [];
  for (let at = element; at.parentElement !== null && at.id !== 'page'; at = at.parentElement) {
    for (const other of at.parentElement.children) {
      // What is spoken goes on being spoken.
      const silent = other.getAttribute('aria-live') === null;
      if (other !== at && silent && other instanceof HTMLElement && !other.inert) aside.push(other);
    }
  }
  for (const other of aside) other.inert = true;
  return () => {
    for (const other of aside) other.inert = false;
  };
}

/** As far as the browser can; it lets go whenever the page is out of sight. */
function stayAwake(): () => void {
  let lock: WakeLockSentinel | null = null;
  let over = false;
  const ask = async () => {
    if (document.visibilityState !== 'visible') return;
    // Refused on an empty battery, and unknown to some browsers: then the screen sleeps as it always does.
    lock = (await navigator.wakeLock?.request('screen').catch(() => null)) ?? null;
    if (over) void lock?.release();
  };
  void ask();
  document.addEventListener('visibilitychange', ask);
  return () => {
    over = true;
    document.removeEventListener('visibilitychange', ask);
    void lock?.release();
  };
}

/** The whole screen, where the browser allows it; the whole window elsewhere. */
function fillScreen(onLeft: () => void): () => void {
  document.documentElement.requestFullscreen?.().catch(() => {});
  const changed = () => {
    if (document.fullscreenElement === null) onLeft();
  };
  document.addEventListener('fullscreenchange', changed);
  return () => {
    document.removeEventListener('fullscreenchange', changed);
    if (document.fullscreenElement !== null) void document.exitFullscreen().catch(() => {});
  };
}

function onEscape(then: () => void): () => void {
  const heard = (event: KeyboardEvent) => {
    if (event.key === 'Escape' && !event.defaultPrevented) then();
  };
  window.addEventListener('keydown', heard);
  return () => window.removeEventListener('keydown', heard);
}
