import path from 'node:path';
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { defineMdastPlugin, type MdastNode, type MdastPluginEntry } from 'satteri';
import { readPicture } from './picture-file.ts';

/** The word that shows a picture, with the attributes that name its file and say what it shows. */
const WORD = 'Picture';

/**
 * Gives each picture of a lesson what its page needs to know before it is drawn: how large it is. What `<Picture of="…">`
 * names becomes a picture of Markdown inside of it, so that both are imported and made smaller in one way.
 */
export const picturesPlugin: MdastPluginEntry = ({ fileURL, sourceFormat }) => {
  if (sourceFormat !== 'mdx' || !fileURL) return null;
  const folder = path.dirname(fileURLToPath(fileURL));
  const pictureOf = (url: string, alt: string): MdastNode => ({
    type: 'image',
    // A name alone would be looked for among the installed packages.
    url: /^\.{0,2}\//u.test(url) ? url : `./${url}`,
    alt,
    data: { hProperties: propertiesOf(path.resolve(folder, decodeURI(url))) },
  });
  const fill = (
    node: Readonly<Extract<MdastNode, { type: 'mdxJsxFlowElement' | 'mdxJsxTextElement' }>>,
    replace: (by: MdastNode) => void,
  ) => {
    if (node.name !== WORD || node.children.some(isPhoto)) return;
    const given = (name: string) => {
      const value = node.attributes.find((one) => one.type === 'mdxJsxAttribute' && one.name === name)?.value;
      return typeof value === 'string' ? value : '';
    };
    const photo = {
      type: node.type,
      name: 'span',
      attributes: [{ type: 'mdxJsxAttribute', name: 'slot', value: 'photo' }],
      children: [pictureOf(encodeURI(given('of')), given('shows'))],
    };
    replace({ ...node, children: [photo, ...node.children] } as MdastNode);
  };
  return defineMdastPlugin({
    name: 'pictures',
    image(node, context) {
      if ((node.data && 'hProperties' in node.data) || /^[a-z]+:/iu.test(node.url)) return;
      context.replaceNode(node, pictureOf(node.url, node.alt ?? ''));
    },
    mdxJsxFlowElement: (node, context) => fill(node, (by) => context.replaceNode(node, by)),
    mdxJsxTextElement: (node, context) => fill(node, (by) => context.replaceNode(node, by)),
  });
};

const isPhoto = (node: Readonly<MdastNode>): boolean =>
  (node.type === 'mdxJsxFlowElement' || node.type === 'mdxJsxTextElement') &&
  node.attributes.some((one) => one.type === 'mdxJsxAttribute' && one.name === 'slot' && one.value === 'photo');

function propertiesOf(file: string): Record<string, string> {
  const picture = existsSync(file) ? readPicture(file) : undefined;
  if (!picture) return { 'data-kind': 'drawing' };
  const { kind, width, height } = picture;
  return { 'data-kind': kind, 'data-across': String(width), 'data-high': String(height) };
}
