// The frame of the page: one screen, the ways to the others, and what there is to tell.
import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { AppContext, type App as AppModel, type AppState } from './state/app';
import { useStore } from './state/store';
import { Line } from './screens/Line';
import { routes, wayNames, type Route } from './routes';

/** A notice goes by itself after so long; long enough to read it twice and to reach Undo. */
const NOTICE_MS = 12_000;

const noticeOf = (state: AppState) => state.notice;
const settingsOf = (state: AppState) => state.settings;

function routeNow(): Route {
  const word = location.hash.slice(1);
  return word in routes ? (word as Route) : 'line';
}

/** A screen that is fetched when it is first looked at. */
function useScreen(route: Route): ComponentType | 'coming' | Error {
  const [screens, setScreens] = useState<Partial<Record<Route, ComponentType | Error>>>({ line: Line });
  useEffect(() => {
    if (screens[route] && !(screens[route] instanceof Error)) return;
    routes[route]().then(
      (screen) => setScreens((known) => ({ ...known, [route]: screen })),
      (error: unknown) => setScreens((known) => ({ ...known, [route]: new Error(String(error)) })));
  }, [route]);
  return screens[route] ?? 'coming';
}

export function App({ app }: { app: AppModel }) {
  const [route, setRoute] = useState(routeNow);
  const settings = useStore(app.state, settingsOf);
  useEffect(() => {
    const follow = (): void => {
      setRoute(routeNow());
      window.scrollTo(0, 0);
    };
    addEventListener('hashchange', follow);
    return () => removeEventListener('hashchange', follow);
  }, []);
  useEffect(() => { document.documentElement.dataset.look = settings.look; }, [settings.look]);
  const Screen = useScreen(route);
  return (
    <AppContext.Provider value={app}>
      <div class="frame">
        <main id="screen" tabIndex={-1}>
          {Screen === 'coming' ? <p class="words">One moment …</p>
            : Screen instanceof Error
              ? <p class="words" role="alert">This screen did not load. Check the connection and open it again.</p>
              : <Screen />}
        </main>
        <Ways now={route} />
        <Notice app={app} />
      </div>
    </AppContext.Provider>
  );
}

function Ways({ now }: { now: Route }) {
  return (
    <nav class="ways" aria-label="Screens">
      {(Object.entries(wayNames) as [Route, string][]).map(([route, name]) => (
        <a key={route} href={`#${route}`} {...(route === now ? { 'aria-current': 'page' } : {})}>{name}</a>
      ))}
    </nav>
  );
}

function Notice({ app }: { app: AppModel }) {
  const notice = useStore(app.state, noticeOf);
  useEffect(() => {
    if (!notice) return undefined;
    const timer = setTimeout(() => {
      if (app.state.get().notice === notice) app.state.change({ notice: null });
    }, NOTICE_MS);
    return () => clearTimeout(timer);
  }, [notice]);
  if (!notice) return <div role="status" />;
  const close = (): void => app.state.change({ notice: null });
  return (
    <div class="notice" role="status">
      <span>{notice.words}</span>
      <span class="buttons">
        {notice.undo && (
          <button type="button" class="button" onClick={() => { notice.undo?.(); close(); }}>Undo</button>
        )}
        <button type="button" class="button" onClick={close}>Close</button>
      </span>
    </div>
  );
}
