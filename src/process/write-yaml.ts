import { Document, isCollection, isMap, isScalar, isSeq, type Node, visit } from "yaml";

/** A value of a file; undefined words are left out. */
type Written =
  | string
  | number
  | boolean
  | undefined
  | readonly Written[]
  | { readonly [word: string]: Written };

/**
 * Plain data as a YAML file for people: a list or object of nothing but short values in one line of brackets, the rest
 * in blocks, long text unbroken.
 */
export function writeYaml(plain: { readonly [word: string]: Written }): string {
  const document = new Document(plain, { aliasDuplicateObjects: false });
  visit(document, {
    Collection(_key, node, path) {
      // A step is a block however little it says; and so is the file.
      if (path.length > 1 && !isStep(node, path.at(-1))) node.flow = isShort(node);
    },
  });
  return document.toString({ lineWidth: 0, flowCollectionPadding: true });
}

function isStep(node: Node, parent: unknown): boolean {
  return isMap(node) && isSeq(parent) && node.has("step");
}

function isShort(node: Node): boolean {
  if (!isCollection(node) || node.items.length > 6) return false;
  return node.items.every((item) => {
    const value: unknown = isScalar(item) ? item : (item as { value?: unknown }).value;
    return isScalar(value) ? String(value.value).length <= 40 : isScalar(item);
  });
}
