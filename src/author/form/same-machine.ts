/** Who may use the form: pages of this very site, opened on the machine that serves it. */

/** What a request tells of where it comes from. */
export type FormRequest = {
  /** The address at the other end of the line. */
  remote: string | undefined;
  method: string | undefined;
  headers: Readonly<Record<string, string | string[] | undefined>>;
};

const isLoopback = (address: string): boolean => /^(127(\.\d{1,3}){3}|::1|::ffff:127(\.\d{1,3}){3})$/.test(address);
const isOwnName = (name: string): boolean =>
  name === 'localhost' || name === '[::1]' || /^127(\.\d{1,3}){3}$/.test(name);

/**
 * Whether a request comes from this machine and from a page of this site. The name that was asked for is looked at too,
 * since a page elsewhere can give its own name this machine's address; and a write has to say where it comes from.
 *
 * @returns why not, or undefined where all is well
 */
export function refusal({ remote, method, headers }: FormRequest): string | undefined {
  const host = String(headers.host ?? '');
  if (
    !remote ||
    !isLoopback(remote) ||
    !URL.canParse(`http://${host}`) ||
    !isOwnName(new URL(`http://${host}`).hostname)
  )
    return 'The form works only on the machine where npm start runs.';
  const { origin } = headers;
  const isOwn = origin === `http://${host}` || origin === `https://${host}`;
  const isRead = method === 'GET' || method === 'HEAD';
  if (origin === undefined ? !isRead : !isOwn) return 'This request does not come from a page of this site.';
  if (!isRead && !String(headers['content-type']).startsWith('application/json')) return 'This is not a change.';
  return undefined;
}
