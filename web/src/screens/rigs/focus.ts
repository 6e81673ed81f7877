// Leading the eye to the field that a problem is about.

/** The element of a path, else of the nearest table above it. */
export function elementFor(root: ParentNode, path: string): HTMLElement | undefined {
  for (let at = path; at !== ''; at = at.replace(/(\.[^.[\]]+|\[\d+\]|^[^.[\]]+)$/, '')) {
    const found = [...root.querySelectorAll<HTMLElement>('[data-path]')].find((one) => one.dataset['path'] === at) ??
      [...root.querySelectorAll<HTMLElement>('[data-path]')].find((one) =>
        one.dataset['path']?.startsWith(`${at}.`) || one.dataset['path']?.startsWith(`${at}[`));
    if (found) return found;
  }
  return undefined;
}

export function leadTo(root: ParentNode, path: string): void {
  const element = elementFor(root, path);
  if (!element) return;
  for (let fold = element.closest('details'); fold; fold = fold.parentElement?.closest('details') ?? null) {
    fold.open = true;
  }
  element.focus({ preventScroll: true });
  element.scrollIntoView({ block: 'center' });
}

/** The rigger that a problem is about. */
export function riggerOf(path: string | null | undefined): number | undefined {
  const match = /^riggers\[(\d+)\]/.exec(path ?? '');
  return match ? Number(match[1]) : undefined;
}
