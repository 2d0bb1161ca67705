/** Finds the Chromium that the tests use, or installs one the way that works on this machine. */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import path from 'node:path';
import { chromium } from 'playwright';

/**
 * What a window does beside showing a page. The pages of its address bar alone take as much of the processor as a short
 * test. Only the last list counts that a browser is given, so what Playwright turns off stands here too.
 */
const notForTests = [
  ...['PreloadTopChromeWebUI', 'WebUIOmniboxAimPopup', 'WebUIOmniboxPopup'],
  ...['AvoidUnnecessaryBeforeUnloadCheckSync', 'DestroyProfileOnBrowserClose', 'HttpsUpgrades'],
  ...['HttpsFirstBalancedModeAutoEnable', 'LensOverlay', 'MediaRouter', 'PaintHolding'],
  ...['ThirdPartyStoragePartitioning', 'AvoidCorsURLLoaderRestartOnRedirect', 'TcpPortRandomizationWin'],
  ...['OptimizationHints', 'NetworkTimeServiceQuerying', 'AimEnabled', 'PreconnectToSearch'],
];

/** Whatever a browser wants from the world outside, the tests do not give it: only this machine has a name. */
const browserArguments = [
  ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []), // as root, Chromium does not start with its sandbox
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-domain-reliability',
  `--disable-features=${notForTests.join(',')}`,
  '--disable-sync',
  '--no-default-browser-check',
  '--no-first-run',
  '--no-pings',
  '--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE localhost, EXCLUDE 127.0.0.1',
];

type Machine = { platform: NodeJS.Platform; environment: NodeJS.ProcessEnv; exists: (file: string) => boolean };
const thisMachine: Machine = { platform: process.platform, environment: process.env, exists: existsSync };

/**
 * The browser to use: what PLAYWRIGHT_CHROMIUM_PATH or CHROMIUM names, Playwright's own, or an installed Chromium or
 * Chrome.
 *
 * @param own where Playwright would keep its own browser
 * @returns its program file, or undefined where there is none
 */
export function findBrowser(own = chromium.executablePath(), machine: Machine = thisMachine): string | undefined {
  const { PLAYWRIGHT_CHROMIUM_PATH, CHROMIUM } = machine.environment;
  const places = [PLAYWRIGHT_CHROMIUM_PATH, CHROMIUM, own, ...usualPlaces(machine)];
  return places.find((file) => file !== undefined && file !== '' && machine.exists(file));
}

/** What Playwright needs to start the browser of this machine. */
export function launchOptions(): { executablePath?: string; args: string[] } {
  const executablePath = findBrowser();
  return { ...(executablePath !== undefined && { executablePath }), args: browserArguments };
}

function usualPlaces({ platform, environment }: Machine): string[] {
  if (platform === 'darwin') {
    return ['/Applications', `${environment.HOME}/Applications`].flatMap((folder) => [
      `${folder}/Google Chrome.app/Contents/MacOS/Google Chrome`,
      `${folder}/Chromium.app/Contents/MacOS/Chromium`,
    ]);
  }
  if (platform === 'win32') {
    return [environment.PROGRAMFILES, environment['PROGRAMFILES(X86)'], environment.LOCALAPPDATA]
      .filter((folder) => folder !== undefined)
      .flatMap((folder) => [
        `${folder}\\Google\\Chrome\\Application\\chrome.exe`,
        `${folder}\\Chromium\\Application\\chrome.exe`,
      ]);
  }
  const names = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'];
  const folders = [
    ...(environment.PATH ?? '').split(path.delimiter).filter(Boolean),
    '/usr/bin',
    '/usr/local/bin',
    '/snap/bin',
  ];
  return folders.flatMap((folder) => names.map((name) => path.posix.join(folder, name)));
}

/**
 * Installs a Chromium and says what it does.
 *
 * On Debian and its kin with the right to install packages: their chromium. Anywhere else: Playwright's own.
 *
 * @returns whether a browser is there afterwards
 */
export function installBrowser(say: (line: string) => void): boolean {
  const run = (command: string, args: string[]) => {
    say(`  ${[command, ...args].join(' ')}`);
    return spawnSync(command, args, { stdio: 'inherit', shell: process.platform === 'win32' }).status === 0;
  };
  say('No Chromium or Chrome is installed. Installing one:');
  const prefix = packageRights();
  if (prefix) {
    const [first, ...rest] = [...prefix, 'apt-get'];
    if (
      run(first, [...rest, 'update']) &&
      run(first, [...rest, 'install', '-y', '--no-install-recommends', 'chromium'])
    ) {
      return findBrowser() !== undefined;
    }
  }
  if (run('npx', ['playwright', 'install', 'chromium']) && findBrowser() !== undefined) return true;
  say('That did not work. Install Chromium or Chrome yourself, or name its program file in PLAYWRIGHT_CHROMIUM_PATH.');
  return false;
}

/** What goes before apt-get: nothing for root, sudo where it asks for no password; undefined without apt or the right. */
export function packageRights(): string[] | undefined {
  if (process.platform !== 'linux' || !existsSync('/etc/debian_version')) return undefined;
  if (process.getuid?.() === 0) return [];
  return spawnSync('sudo', ['-n', 'true'], { stdio: 'ignore' }).status === 0 ? ['sudo', '-n'] : undefined;
}
