import { isMap, isSeq, Scalar, type Document, type YAMLMap, type YAMLSeq } from 'yaml';
import { lessonDocument } from './lesson-document';
import type { StepKind } from './step';
import { stepDraft } from './step-drafts';

/*
 * Changes to a lesson's text that leave the rest of it as it was written, remarks included. A text that is not YAML is
 * given back unchanged: it has to be mended as text.
 */

export type Path = readonly (string | number)[];
export type Value = string | number | boolean | null | readonly Value[] | { readonly [key: string]: Value };

/** What a lesson's text holds, of whatever shape; undefined while it is not YAML. */
export function lessonData(text: string): unknown {
  const read = lessonDocument(text);
  try {
    return read.ok ? read.document.toJS({ maxAliasCount: 0 }) : undefined;
  } catch {
    return undefined;
  }
}

/** Puts a value at a place, or takes it away where it is undefined. */
export function withValue(text: string, path: Path, value: Value | undefined): string {
  return edited(text, (document) => {
    if (value === undefined) document.deleteIn(path);
    else document.setIn(path, nodeOf(document, value));
  });
}

/** Adds an entry to the end of a list, which is made if there is none. */
export function withEntry(text: string, path: Path, value: Value): string {
  return edited(text, (document) => {
    const list = document.getIn(path);
    if (isSeq(list)) list.add(nodeOf(document, value));
    else document.setIn(path, nodeOf(document, [value]));
  });
}

/** Moves an entry of a list up or down. */
export function withEntryMoved(text: string, path: Path, from: number, to: number): string {
  return edited(text, (document) => {
    const list = document.getIn(path);
    if (!isSeq(list) || from < 0 || to < 0 || from >= list.items.length || to >= list.items.length) return;
    const [entry] = list.items.splice(from, 1);
    list.items.splice(to, 0, entry);
  });
}

/** Gives an entry of a group another name, in its place. */
export function withKey(text: string, path: Path, before: string, after: string): string {
  return edited(text, (document) => {
    const group = document.getIn(path);
    if (!isMap(group) || group.has(after)) return;
    const pair = (group as YAMLMap).items.find(({ key }) => String(key instanceof Scalar ? key.value : key) === before);
    if (pair) pair.key = new Scalar(after);
  });
}

/**
 * Where a new step of a kind comes to stand: after another, or else at the end; but before the summing-up that ends a lesson,
 * unless it is one itself.
 */
export function placeOfStep(data: unknown, kind: StepKind, after?: number): number {
  const steps = stepsOf(data);
  const place = after === undefined ? steps.length : Math.min(after + 1, steps.length);
  const last = steps.at(-1) as { readonly kind?: unknown } | null | undefined;
  return place === steps.length && kind !== 'recap' && last?.kind === 'recap' ? place - 1 : place;
}

/** Adds a step of a kind, with something to begin from, at the place of `placeOfStep`. */
export function withStep(text: string, kind: StepKind, after?: number): string {
  return edited(text, (document) => {
    const data: unknown = document.toJS();
    const list = document.get('steps');
    const step = nodeOf(document, stepDraft(kind, freshId(data, kind)));
    if (!isSeq(list)) document.set('steps', document.createNode([step]));
    else list.items.splice(placeOfStep(data, kind, after), 0, step);
  });
}

/** Puts a copy of a step after it. */
export function withStepCopied(text: string, index: number): string {
  return edited(text, (document) => {
    const list = document.get('steps');
    if (!isSeq(list) || !isMap(list.items[index])) return;
    const copy = (list as YAMLSeq<YAMLMap>).items[index]!.clone() as YAMLMap;
    copy.set('id', freshId(document.toJS(), String(copy.get('id') ?? 'step').replace(/-\d+$/, '')));
    list.items.splice(index + 1, 0, copy);
  });
}

function edited(text: string, change: (document: Document.Parsed) => void): string {
  const read = lessonDocument(text);
  if (!read.ok) return text;
  try {
    change(read.document);
    return read.document.toString({ lineWidth: 0, flowCollectionPadding: true });
  } catch {
    // The place is not where the lesson's shape has it, or the text refers to what is not there: nothing can be changed.
    return text;
  }
}

/** Texts of several lines are written as blocks, as a person would. */
function nodeOf(document: Document.Parsed, value: Value) {
  const node = document.createNode(value);
  blocked(node);
  return node;
}

function blocked(node: unknown): void {
  if (node instanceof Scalar) {
    if (typeof node.value === 'string' && node.value.includes('\n')) node.type = Scalar.BLOCK_LITERAL;
  } else if (isSeq(node)) node.items.forEach(blocked);
  else if (isMap(node)) node.items.forEach(({ value }) => blocked(value));
}

function stepsOf(data: unknown): readonly unknown[] {
  const steps = typeof data === 'object' && data !== null ? (data as { steps?: unknown }).steps : undefined;
  return Array.isArray(steps) ? steps : [];
}

function freshId(data: unknown, base: string): string {
  const steps = stepsOf(data);
  const taken = new Set(
    steps.map((step) => (typeof step === 'object' && step !== null ? (step as { id?: unknown }).id : undefined)),
  );
  let number = 1;
  while (taken.has(`${base}-${number}`)) number += 1;
  return `${base}-${number}`;
}
